package hours

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/wording"
)

// Labor is how many times as long stages and skills take as the program's own figures, as
// builds have shown. What it does not name takes what it took.
type Labor struct {
	stages map[Stage]float64
	skills map[Skill]float64
}

// LaborHeads are the columns of a labor file.
func LaborHeads() []string { return []string{"what", "of", "times"} }

// ReadLabor reads a labor file: a line "stage,ribs,1.2" for a stage beside the others, or
// "skill,beginner,1.6" for a skill beside an experienced builder. Lines that begin with #
// are remarks. The name is used in messages only.
//
// Errors: *wording.Fault with the line: what is not known or stands twice, a factor that is
// out of range.
func ReadLabor(data []byte, name string) (*Labor, error) {
	l := &Labor{map[Stage]float64{}, map[Skill]float64{}}
	c := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\uFEFF"))))
	c.Comment, c.FieldsPerRecord, c.TrimLeadingSpace = '#', len(LaborHeads()), true
	rows, err := c.ReadAll()
	if err != nil || len(rows) == 0 || !slices.Equal(rows[0], LaborHeads()) {
		return nil, &wording.Fault{File: name, Text: "is no labor file; accepted: CSV text with the columns " + strings.Join(LaborHeads(), ",")}
	}
	for _, row := range rows[1:] {
		if err := l.row(row); err != nil {
			return nil, &wording.Fault{File: name, Key: strings.Join(row[:2], " "), Text: err.Error()}
		}
	}
	return l, nil
}

func (l *Labor) row(row []string) error {
	times, err := strconv.ParseFloat(row[2], 64)
	if err != nil || !(times >= 0.1 && times <= 10) {
		return fmt.Errorf("%q is out of range; accepted: 0.1 to 10", wording.Clip(row[2], 20))
	}
	switch row[0] {
	case "stage":
		s := Stage(row[1])
		if !slices.Contains(Stages(), s) {
			return fmt.Errorf("is no stage; accepted: %s", wording.List(Stages(), func(s Stage) string { return string(s) }))
		}
		if l.stages[s] != 0 {
			return fmt.Errorf("stands twice; keep one line")
		}
		l.stages[s] = times
	case "skill":
		s, err := ParseSkill(row[1])
		if err != nil {
			return err
		}
		if l.skills[s] != 0 {
			return fmt.Errorf("stands twice; keep one line")
		}
		l.skills[s] = times
	default:
		return fmt.Errorf("is not known; accepted: stage or skill")
	}
	return nil
}

// Of is the work as builds have shown it for a skill. A nil Labor leaves it as it is.
func (l *Labor) Of(all []Work, s Skill) []Work {
	if l == nil {
		return all
	}
	out := slices.Clone(all)
	for i, w := range out {
		by := 1.0
		if v := l.stages[w.Stage]; v > 0 {
			by = v
		}
		if v := l.skills[s]; v > 0 {
			by *= v / s.Factor()
		}
		out[i].Minutes *= by
	}
	return out
}
