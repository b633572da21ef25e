package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/layout"
)

// tape is a row of absolute distances along a strip, so that any piece of it
// can be laid against a tape measure on its own.
type tape struct {
	from, to float64 // mm
	top      float64 // y of the ends of the ticks, which hang down from there
}

// draw adds the ticks, and keeps joints off the numbers.
func (t tape) draw(d *layout.Drawing, u measure.System) {
	step, labelled, write := 10.0, 10, func(i int) string { return fmt.Sprintf("%d mm", i*10) }
	if u == measure.Imperial {
		step, labelled, write = 25.4, 6, func(i int) string { return fmt.Sprintf("%d in", i) }
	}
	for i := int(math.Ceil(t.from/step - 1e-9)); float64(i)*step <= t.to+1e-9; i++ {
		x, length := float64(i)*step, 1.5
		if i%5 == 0 && u == measure.Metric {
			length = 2.4
		}
		if i%labelled == 0 {
			length = 3.2
			d.Write(x, t.top-length-3.3, small, layout.Middle, write(i))
			d.Keep = append(d.Keep, layout.Span{From: x - 11, To: x + 11})
		}
		d.Straight(layout.Tick, x, t.top, x, t.top-length)
	}
}
