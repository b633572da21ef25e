package pattern

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// lanes stack one-line labels above a strip. Each label stands to the right of
// its mark, joined to it by a leader; a label that reaches over marks farther
// right lies above their leaders, so nothing crosses a letter.
type lanes struct {
	base   float64 // y of the strip's edge, where leaders start
	labels []tag
}

type tag struct {
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
	l.labels = append(l.labels, tag{x: x, width: lettering.Width(words, small), words: words})
}

func (l *lanes) draw(d *layout.Drawing) {
	slices.SortStableFunc(l.labels, func(a, b tag) int {
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
		d.Straight(layout.Tick, a.x, l.base, a.x, y+small)
		d.Write(a.x+labelOff, y, small, layout.Left, a.words)
		d.Keep = append(d.Keep, layout.Span{From: a.x - 4, To: a.x + 2 + a.width})
	}
}

// tape draws a row of absolute distances along a strip, from and to in mm, so that any
// piece of it can be laid against a tape measure on its own. The ticks hang down from
// top; joints keep off the numbers.
func tape(d *layout.Drawing, u measure.System, from, to, top float64) {
	step, labelled, write := 10.0, 10, func(i int) string { return fmt.Sprintf("%d mm", i*10) }
	if u == measure.Imperial {
		step, labelled, write = 25.4, 6, func(i int) string { return fmt.Sprintf("%d in", i) }
	}
	for i := int(math.Ceil(from/step - 1e-9)); float64(i)*step <= to+1e-9; i++ {
		x, length := float64(i)*step, 1.4
		if i%5 == 0 && u == measure.Metric {
			length = 1.9
		}
		if i%labelled == 0 {
			length = 2.4
			d.Write(x, top-length-0.4-small, small, layout.Middle, write(i))
			d.Keep = append(d.Keep, layout.Span{From: x - 11, To: x + 11})
		}
		d.Straight(layout.Tick, x, top, x, top-length)
	}
}
