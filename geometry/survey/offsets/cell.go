package offsets

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// unit is what a bare number in a column means.
type unit struct {
	name string
	mm   float64
}

func units() []unit {
	return []unit{{"mm", 1}, {"cm", 10}, {"m", 1000}, {"in", 25.4}, {"ft", 304.8}}
}

// farthest is the largest number read, mm: 100 m. More is a slip of the unit.
const farthest = 1e5

// cell reads one number of a column and returns it in mm.
func (u unit) cell(text string) (float64, error) {
	v, err := u.value(text)
	switch {
	case err != nil:
		return 0, err
	case math.IsNaN(v) || math.Abs(v) > farthest:
		return 0, fmt.Errorf("%q is %g mm, which no hull has", wording.Clip(text, 40), v)
	}
	return v, nil
}

func (u unit) value(text string) (float64, error) {
	sign, rest := 1.0, text
	if strings.HasPrefix(rest, "-") {
		sign, rest = -1, rest[1:]
	}
	if strings.Count(rest, "-") > 0 && strings.Trim(rest, "0123456789-+") == "" {
		if u.name != "in" && u.name != "ft" {
			return 0, fmt.Errorf("%q is feet-inches-eighths in a column of %s; accepted: numbers of %s, or name the column _in", wording.Clip(text, 40), u.name, u.name)
		}
		v, err := eighths(rest)
		return sign * v, err
	}
	if v, err := strconv.ParseFloat(text, 64); err == nil && strings.Trim(text, "+-0123456789.eE") == "" {
		return v * u.mm, nil
	}
	if l, err := measure.ParseLength(text); err == nil {
		return float64(l), nil
	}
	if strings.Contains(text, ",") {
		return 0, fmt.Errorf("%q has a decimal comma; write 3.5", wording.Clip(text, 40))
	}
	return 0, fmt.Errorf("%q is no number; accepted: a number of %s, as 34.5, feet-inches-eighths, as 1-2-6, or a length with its unit, as 34 1/2 in", wording.Clip(text, 40), u.name)
}

// eighths reads feet-inches-eighths: 1-2-6, with + for a sixteenth more.
func eighths(text string) (float64, error) {
	body, more := strings.CutSuffix(text, "+")
	parts := strings.Split(body, "-")
	if len(parts) == 2 {
		return 0, fmt.Errorf("%q may be feet and inches or inches and eighths; write all three, as 1-2-6 for 1 ft 2 6/8 in", wording.Clip(text, 40))
	}
	bad := fmt.Errorf("%q is not feet-inches-eighths; write it as 1-2-6, inches under 12 and eighths under 8", wording.Clip(text, 40))
	if len(parts) != 3 {
		return 0, bad
	}
	var n [3]int
	for i, p := range parts {
		v, err := strconv.Atoi(p)
		if err != nil || v < 0 || len(p) > 4 {
			return 0, bad
		}
		n[i] = v
	}
	if n[1] > 11 || n[2] > 7 {
		return 0, bad
	}
	eighth := 8*(12*n[0]+n[1]) + n[2]
	mm := float64(eighth) * 3.175
	if more {
		mm += 1.5875
	}
	return mm, nil
}

// column is one of the three that count.
type column struct {
	at   int // place in a row, from 0
	unit unit
}

// header is what the first line says.
type header struct {
	station, height, breadth column
	mirrored                 bool // stations are counted from midship towards the ends
}

// readHeader finds the three columns by their names.
func readHeader(cells []string) (header, error) {
	var h header
	found := map[string]bool{}
	for i, c := range cells {
		name := strings.ToLower(strings.TrimSpace(c))
		for _, u := range units() {
			stem, ok := strings.CutSuffix(name, "_"+u.name)
			if !ok {
				continue
			}
			col := column{i, u}
			switch stem {
			case "station":
				h.station = col
			case "station_from_midship":
				h.station, h.mirrored, stem = col, true, "station"
			case "height":
				h.height = col
			case "half_breadth":
				h.breadth = col
			default:
				continue
			}
			if found[stem] {
				return h, fmt.Errorf("two columns give the %s; keep one", strings.ReplaceAll(stem, "_", "-"))
			}
			found[stem] = true
		}
	}
	if len(found) < 3 {
		return h, errors.New("the first line must name the columns with their units, as station_mm,height_mm,half_breadth_mm or the same with _in")
	}
	return h, nil
}
