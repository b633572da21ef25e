package joint

import (
	"fmt"
	"math"
	"sort"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
)

// leastWall is the thinnest wall between a hole and an edge that still is one, mm. What a
// builder should keep is told, not asked.
const leastWall = 0.5

// keeps reports whether the holes beside a stringer's end keep within the stem.
func (l Landing) keeps() bool { return l.Edge >= l.Drill/2+leastWall }

// wallTo is the least wood from a place on the stem to its holes, mm.
func (l Landing) wallTo(p geometry.Point) float64 {
	least := math.Inf(1)
	for _, h := range l.Holes {
		least = min(least, p.Sub(h.At).Norm()-l.Drill/2)
	}
	return least
}

// landed refuses stringers so wide that a hole of their lashing comes out of the stem.
func (j *Joints) landed() error {
	for _, i := range []int{1, 0} {
		l := &j.Landings[i]
		if l.keeps() {
			continue
		}
		d := j.Frame.Design
		instead := fmt.Sprintf("make the stem wider (%s.moulded)", l.End)
		if most := narrower(j.Frame); most > 0 {
			instead = fmt.Sprintf("accepted here: up to %d mm, or a wider stem (%s.moulded)", most, l.End)
		}
		return fmt.Errorf("stringers.width: %s is too wide for the %s stem: a hole of %.0f mm beside a stringer's end has %.1f mm of wood; %s",
			d.Stringers.Width, l.End, l.Drill, l.Edge-l.Drill/2, instead)
	}
	return nil
}

// narrower returns the widest stringers, in whole mm, whose lashings keep to the stems of the
// frame built with them; 0 for none.
func narrower(f *frame.Frame) int {
	serves := func(mm int) bool {
		d := *f.Design
		d.Stringers.Width = measure.Length(mm)
		if d.Check() != nil {
			return false
		}
		with, err := frame.Build(&d)
		if err != nil {
			return false
		}
		j := Joints{Frame: with, Usual: Remembered()}
		m := maker{Joints: &j}
		for _, e := range ends(with) {
			if l := m.landing(e, outlineOf(e.Outline.Flatten(0.05))); !l.keeps() {
				return false
			}
		}
		return true
	}
	return sort.Search(max(0, int(f.Design.Stringers.Width)-1), func(less int) bool { return !serves(less + 1) })
}
