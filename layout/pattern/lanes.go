package pattern

import (
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// lanes stack one-line labels above a strip. Each label stands to the right of
// its mark, joined to it by a leader; a label that reaches over marks farther
// right lies above their leaders, so nothing crosses a letter.
type lanes struct {
	base   float64 // y of the strip's edge, where leaders start
	labels []label
}

type label struct {
	x, width float64
	lane     int
	words    string
}

const (
	labelOff = 1.2 // mm from a leader to its label
	labelGap = 3.0 // mm left between labels of one lane
)

// add notes a label for the mark at x.
func (l *lanes) add(x float64, words string) {
	words = lettering.Safe(words)
	l.labels = append(l.labels, label{x: x, width: lettering.Width(words, small), words: words})
}

// draw places all labels and keeps joints off them.
func (l *lanes) draw(d *layout.Drawing) {
	slices.SortStableFunc(l.labels, func(a, b label) int {
		if a.x < b.x {
			return 1
		}
		return -1
	})
	for i := range l.labels {
		a := &l.labels[i]
		for _, b := range l.labels[:i] {
			if b.x < a.x+labelOff+a.width+labelGap {
				a.lane = max(a.lane, b.lane+1)
			}
		}
		y := l.base + 1.4 + float64(a.lane)*row
		d.Line(layout.Tick, curve.Polyline(geometry.Point{X: a.x, Y: l.base}, geometry.Point{X: a.x, Y: y + small}))
		d.Write(a.x+labelOff, y, small, layout.Left, a.words)
		d.Keep = append(d.Keep, layout.Span{From: a.x - 4, To: a.x + 2 + a.width})
	}
}
