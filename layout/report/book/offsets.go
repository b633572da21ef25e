package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/float"
	"ribwright/layout/report"
)

// offsetStation is a place where the hull is measured: the trade counts them from the bow.
type offsetStation struct {
	name string
	x    float64
}

// stations cuts the length overall in ten, with half stations at the ends.
func stations(h *float.Hull) []offsetStation {
	aft, fore := h.Ends()
	var out []offsetStation
	for i, name := range []string{0: "0", 1: "1/2", 19: "9 1/2", 20: "10"} {
		if i%2 == 0 {
			name = fmt.Sprint(i / 2)
		}
		if name != "" {
			out = append(out, offsetStation{name, fore + (aft-fore)*float64(i)/20})
		}
	}
	return out
}

// offsetLine is one row of the table: a height or a half-breadth at each station.
type offsetLine struct {
	name string
	at   func(x float64) (mm float64, ok bool)
}

func (w *writer) heightLines() []offsetLine {
	h := w.Afloat.Hull
	out := []offsetLine{
		{"sheer", func(x float64) (float64, bool) { _, s := h.Heights(x); return s, true }},
	}
	for _, y := range w.buttocks() {
		out = append(out, offsetLine{"buttock " + w.level(y), func(x float64) (float64, bool) { return h.ButtockHeight(x, y) }})
	}
	for i := len(w.Frame.Stringers) - 1; i >= 0; i-- {
		out = append(out, offsetLine{fmt.Sprintf("stringer %d", i+1), func(x float64) (float64, bool) { p, ok := w.onSkin(i, x); return p.Y, ok }})
	}
	return append(out, offsetLine{"keel", func(x float64) (float64, bool) { k, _ := h.Heights(x); return k, true }})
}

// onSkin is the place of the skin over the middle of a stringer at the station x.
func (w *writer) onSkin(stringer int, x float64) (geometry.Point, bool) {
	line := w.Frame.Stringers[stringer].Line
	if aft, fore := line.Ends(); x < aft || x > fore {
		return geometry.Point{}, false
	}
	mid := line.Point(x)
	best, far := geometry.Point{}, math.Inf(1)
	for _, p := range w.Afloat.Hull.Half(x) {
		if d := p.Sub(geometry.Point{X: mid.Y, Y: mid.Z}).Norm(); d < far {
			best, far = p, d
		}
	}
	return best, true
}

// breadthLines are the sheer and the waterlines, from the top down.
func (w *writer) breadthLines() []offsetLine {
	h := w.Afloat.Hull
	out := []offsetLine{{"sheer", func(x float64) (float64, bool) { _, s := h.Heights(x); return h.Side(x, s), true }}}
	all := w.waterlines()
	for i := len(all) - 1; i >= 0; i-- {
		z := all[i]
		out = append(out, offsetLine{"waterline " + w.level(z), func(x float64) (float64, bool) {
			k, s := h.Heights(x)
			return h.Side(x, z), z > k && z < s
		}})
	}
	for i := len(w.Frame.Stringers) - 1; i >= 0; i-- {
		out = append(out, offsetLine{fmt.Sprintf("stringer %d", i+1), func(x float64) (float64, bool) { p, ok := w.onSkin(i, x); return p.X, ok }})
	}
	return append(out, offsetLine{"keel", func(x float64) (float64, bool) { return h.Bottom(x), true }})
}

// waterlines are the heights of the level lines, mm: close together where the boat floats.
func (w *writer) waterlines() []float64 {
	fine := report.Either(w.Letters.Units, 25, 25.4)
	coarse, low := 2*fine, 6*fine
	top := 0.0
	for _, p := range w.Afloat.Hull.Profile() {
		top = math.Max(top, p[2])
	}
	var out []float64
	for z := fine; z <= low+1; z += fine {
		out = append(out, z)
	}
	for z := low + coarse; z < top; z += coarse {
		out = append(out, z)
	}
	return out
}

// buttocks are the distances of the upright lines from the middle, mm.
func (w *writer) buttocks() []float64 {
	step := report.Either(w.Letters.Units, 50, 50.8)
	var out []float64
	for y := step; y < 0.5*w.Frame.Hull.Beam; y += step {
		out = append(out, y)
	}
	return out
}

// level letters the place of a line in whole mm or inches.
func (w *writer) level(mm float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.0f", mm), fmt.Sprintf("%.0f in", mm/25.4))
}

// eighths letters mm as feet-inches-eighths, + for a sixteenth more: 1-2-3+.
func eighths(mm float64) string {
	n := int(math.Round(math.Abs(mm) / 1.5875))
	out := fmt.Sprintf("%d-%d-%d", n/192, n/16%12, n/2%8)
	if n%2 == 1 {
		out += "+"
	}
	if mm < 0 && n > 0 {
		out = "-" + out
	}
	return out
}

func (w *writer) offset(mm float64) string {
	return report.Either(w.Letters.Units, measure.MM(mm, 0), eighths(mm))
}

func (w *writer) offsets() {
	w.section("Table of offsets")
	w.say("%s, to the outside of the skin, which lies flat between keel, stringers and gunwales. Heights are over the baseline, half-breadths from the middle line. Stations are counted from the bow and stand a tenth of the length apart. Ribs follow the patterns, not this table.",
		report.Either(w.Letters.Units, "Millimeters", "Feet-inches-eighths, + for a sixteenth more"))
	all := stations(w.Afloat.Hull)
	halves := []struct {
		title string
		at    []offsetStation
	}{{"Fore body", all[:len(all)/2+1]}, {"After body", all[len(all)/2:]}}
	for i, half := range halves {
		if i == 1 && w.Frame.Design.EndsAlike() {
			w.say("The after body is like the fore body: station 10 like 0, 9 like 1 and so on.")
			return
		}
		t := report.Titled(half.title).Names("Station")
		place := []string{"from midship"}
		for _, s := range half.at {
			t = t.Numbers(s.name)
			place = append(place, w.offset(s.x))
		}
		t.Row(place...)
		t.Rows = append(t.Rows, w.offsetRows("height of ", w.heightLines(), half.at)...)
		t.Rows = append(t.Rows, w.offsetRows("half-breadth at ", w.breadthLines(), half.at)...)
		w.add(t)
	}
}

func (w *writer) offsetRows(what string, lines []offsetLine, at []offsetStation) [][]string {
	var out [][]string
	for _, l := range lines {
		row := []string{what + l.name}
		for _, s := range at {
			if v, ok := l.at(s.x); ok {
				row = append(row, w.offset(v))
			} else {
				row = append(row, "-")
			}
		}
		out = append(out, row)
	}
	return out
}
