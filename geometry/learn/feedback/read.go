package feedback

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
)

// most is more than a file of the largest boat has, bytes.
const most = 1 << 18

// Read reads a file, or the notes that a builder has filled in: lines without anything
// found are passed over. The name is used in messages only.
//
// Errors: *wording.Fault with the line: what is not known, a figure without its unit or in
// a wrong one, a line that stands twice, and what lies so far from what was worked out that
// it was written wrong, with the slip that explains it.
func Read(data []byte, name string) (*Build, error) {
	r := reader{b: &Build{Name: name, Wood: OtherWood, Stock: design.AirDried.String()}, file: name, seen: map[string]int{}, drawn: hours.Experienced}
	if len(data) > most || bytes.IndexByte(data, 0) >= 0 {
		return nil, r.fault(0, "is no feedback; it is CSV text with the columns %s", strings.Join(heads, ","))
	}
	c := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\uFEFF"))))
	c.Comment, c.FieldsPerRecord, c.TrimLeadingSpace = '#', -1, true
	head := false
	for {
		row, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		var p *csv.ParseError
		if errors.As(err, &p) {
			return nil, r.fault(p.Line, "is no CSV text: %v", p.Err)
		}
		if err != nil {
			return nil, r.fault(0, "%v", err)
		}
		line, _ := c.FieldPos(0)
		if !head {
			if !IsHead(row) {
				return nil, r.fault(line, "the first line is %q; accepted: %s", wording.Clip(strings.Join(row, ","), 40), strings.Join(heads, ","))
			}
			head = true
			continue
		}
		if err := r.row(line, row); err != nil {
			return nil, err
		}
	}
	if len(r.b.Lines) == 0 && !head {
		return nil, r.fault(0, "is empty; its first line is %s", strings.Join(heads, ","))
	}
	for i := range r.b.Lines {
		if l := &r.b.Lines[i]; l.What == Hours {
			l.Drawn /= r.drawn.Factor()
		}
	}
	return r.b, nil
}

// IsHead reports whether a row of cells is the first of a feedback file.
func IsHead(row []string) bool {
	if len(row) < len(heads) {
		return false
	}
	for i, h := range heads {
		if !strings.EqualFold(strings.TrimSpace(row[i]), h) {
			return false
		}
	}
	return true
}

type reader struct {
	b     *Build
	file  string
	seen  map[string]int
	drawn hours.Skill // that hours are drawn for; experienced where a file does not say
}

func (r *reader) fault(line int, format string, args ...any) error {
	return &wording.Fault{File: r.file, Line: line, Text: fmt.Sprintf(format, args...)}
}

// facts are what a build is of, a line each.
var facts = []string{"wood", "stock", "boiler", "board", "skill"}

func (r *reader) row(line int, row []string) error {
	var cell [4]string
	for i, s := range row {
		switch s = strings.TrimSpace(s); {
		case i < len(cell):
			cell[i] = s
		case s != "":
			return r.fault(line, "has more cells than the four of the heading; a name with a comma stands in quotes")
		}
	}
	what, of, drawn, found := strings.ToLower(cell[0]), cell[1], cell[2], cell[3]
	if what == "skill" && drawn != "" {
		var err error
		if r.drawn, err = hours.ParseSkill(drawn); err != nil {
			return r.fault(line, "skill: %v", err)
		}
	}
	if what == "" && of == "" && found == "" || found == "" || found == "-" {
		return nil
	}
	key := what + ": " + strings.ToLower(of)
	if at, twice := r.seen[key]; twice {
		return r.fault(line, "%s stands on line %d already; keep the line that holds", strings.TrimSuffix(strings.TrimSpace(what+" "+of), ":"), at)
	}
	r.seen[key] = line
	if slices.Contains(facts, what) {
		return r.fact(line, what, found)
	}
	for w, k := range kindsOf {
		if what == k.word {
			return r.measured(Line{What: What(w), At: line}, of, drawn, found)
		}
	}
	return r.fault(line, "%q is not known; accepted: %s", wording.Clip(what, 30), strings.Join(words(), ", "))
}

func words() []string {
	out := slices.Clone(facts)
	for _, k := range kindsOf {
		out = append(out, k.word)
	}
	return out
}

// fact reads what the build is of.
func (r *reader) fact(line int, what, found string) (err error) {
	switch what {
	case "wood":
		r.b.Wood = KnownWood(found)
	case "stock":
		var s design.Seasoning
		if err = s.UnmarshalText([]byte(strings.ToLower(found))); err != nil {
			return r.fault(line, "stock: %v", err)
		}
		r.b.Stock = s.String()
	case "skill":
		if r.b.Skill, err = hours.ParseSkill(found); err != nil {
			return r.fault(line, "skill: %v", err)
		}
	case "boiler":
		r.b.Boiler, err = r.mark(line, what, found)
	case "board":
		r.b.Board, err = r.mark(line, what, found)
	}
	return err
}

// mark is a letter or a figure or two, which name nobody.
func (r *reader) mark(line int, what, found string) (string, error) {
	found = strings.ToUpper(found)
	if len(found) > 2 || strings.Trim(found, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789") != "" {
		return "", r.fault(line, "%s: %q is no mark; accepted: one or two letters or figures, as A or 12, the same for all builds that shared it", what, wording.Clip(found, 20))
	}
	return found, nil
}

// KnownWood is a wood as the program calls it, OtherWood where it knows none.
func KnownWood(name string) string {
	if s, err := timber.Lookup(name); err == nil {
		return s.Name
	}
	return OtherWood
}

// measured reads a line with a figure.
func (r *reader) measured(l Line, of, drawn, found string) error {
	k := kindsOf[l.What]
	if l.Of = of; of == "" {
		return r.fault(l.At, "%s: nothing is said of what; accepted: %s", k.word, k.of)
	}
	switch l.What {
	case Weight:
		if l.Of = strings.ToLower(of); !slices.Contains(Parts(), l.Of) {
			return r.fault(l.At, "weight: %q is no part; accepted: %s", wording.Clip(of, 30), strings.Join(Parts(), ", "))
		}
	case Hours:
		if l.Of = strings.ToLower(of); !slices.Contains(hours.Stages(), hours.Stage(l.Of)) {
			return r.fault(l.At, "hours: %q is no stage; accepted: %s", wording.Clip(of, 30), wording.List(hours.Stages(), func(s hours.Stage) string { return string(s) }))
		}
	default:
		if l.Of = strings.ToUpper(of); len(of) > 4 {
			return r.fault(l.At, "%s: %q is no rib; accepted: its name, as M or F3", k.word, wording.Clip(of, 20))
		}
	}
	if l.What == Rib {
		return r.rib(l, drawn, found)
	}
	var err error
	if l.Found, err = r.figure(l, found); err != nil {
		return err
	}
	if l.What != Deeper {
		if l.Drawn, err = r.figure(l, drawn); err != nil {
			return err
		}
	}
	return r.keep(l)
}

func (r *reader) rib(l Line, drawn, found string) (err error) {
	if l.Drawn, err = strconv.ParseFloat(drawn, 64); err != nil || !(l.Drawn >= 1 && l.Drawn <= 1000) {
		return r.fault(l.At, "rib %s: %q is no inner radius over thickness; accepted: 1 to 1000", l.Of, wording.Clip(drawn, 20))
	}
	switch strings.ToLower(found) {
	case "broken":
		l.Found = 1
	case "whole":
	default:
		return r.fault(l.At, "rib %s: %q is not understood; accepted: whole, broken", l.Of, wording.Clip(found, 20))
	}
	r.b.Lines = append(r.b.Lines, l)
	return nil
}

// figure reads a number with its unit.
func (r *reader) figure(l Line, text string) (float64, error) {
	k := kindsOf[l.What]
	for _, u := range k.units {
		number, ok := strings.CutSuffix(strings.ToLower(text), u.word)
		if !ok {
			continue
		}
		if v, err := strconv.ParseFloat(strings.TrimSpace(number), 64); err == nil && !math.IsNaN(v) && !math.IsInf(v, 0) {
			return v * u.is, nil
		}
	}
	return 0, r.fault(l.At, "%s of %s: %q is no figure with its unit; accepted: one in %s, as %s", k.word, l.Of, wording.Clip(text, 20),
		wording.Joined(k.units, " or ", func(u unit) string { return u.word }), l.figure(math.Max(l.Found, 10*k.units[0].is)))
}

// slips multiply a figure, with what they are.
var slips = []struct {
	by   float64
	says string
}{
	{10, "a point is missing, or a nought too many"},
	{0.1, "a nought is missing, or a point too many"},
	{60, "it looks like minutes"},
	{1.0 / 60, "it looks like hours given as minutes"},
	{2.2046, "it looks like pounds given as kilograms"},
	{1 / 2.2046, "it looks like kilograms given as pounds"},
	{1000, "it looks like grams given as kilograms"},
	{100, "two noughts too many, or the point is missing"},
	{0.01, "it looks like a share in the place of percent"},
	{25.4, "it looks like millimeters given as inches"},
}

// keep takes a line that is plausible.
func (r *reader) keep(l Line) error {
	k := kindsOf[l.What]
	fits := func(v float64) bool {
		if l.What == Weight || l.What == Hours {
			return l.Drawn > 0 && v > l.Drawn/apart[l.What] && v < l.Drawn*apart[l.What]
		}
		return v >= k.least && v <= k.most
	}
	if fits(l.Found) && l.Found >= k.least && l.Found <= k.most {
		r.b.Lines = append(r.b.Lines, l)
		return nil
	}
	words := fmt.Sprintf("%s of %s: %s", k.word, l.Of, l.figure(l.Found))
	if l.What == Weight || l.What == Hours {
		if !(l.Drawn > 0) {
			return r.fault(l.At, "%s stands beside %s as drawn; accepted: more than nothing", words, l.figure(l.Drawn))
		}
		words += fmt.Sprintf(" is far from the %s that were worked out", l.figure(l.Drawn))
		near := slices.MinFunc(slips, func(a, b struct {
			by   float64
			says string
		}) int {
			off := func(by float64) float64 { return math.Abs(math.Log(l.Found / by / l.Drawn)) }
			if off(a.by) < off(b.by) {
				return -1
			}
			return 1
		})
		if l.Found > 0 && fits(l.Found/near.by) {
			return r.fault(l.At, "%s: %s; write %s if that is what it was", words, near.says, l.figure(l.Found/near.by))
		}
		return r.fault(l.At, "%s; accepted: %s to %s; look again", words, l.figure(l.Drawn/apart[l.What]), l.figure(l.Drawn*apart[l.What]))
	}
	for _, s := range slips {
		if fits(l.Found / s.by) {
			return r.fault(l.At, "%s is out of range: %s; accepted: %s to %s", words, s.says, l.figure(k.least), l.figure(k.most))
		}
	}
	return r.fault(l.At, "%s is out of range; accepted: %s to %s", words, l.figure(k.least), l.figure(k.most))
}

// apart is by what factor weights and hours may lie from what was worked out before they
// were written wrong: a part twice as heavy, hands seven times as slow. Our own choice.
var apart = [kinds]float64{Weight: 2, Hours: 7}
