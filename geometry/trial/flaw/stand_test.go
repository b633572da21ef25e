package flaw

import (
	"math"
	"reflect"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
)

// TestSee: whoever stands past an end looks from beyond it towards the other, abeam a
// boat's length off; without a size the fault is none, and with one only the boat with
// the fault has moved, by no more than that.
func TestSee(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	for _, kind := range []Kind{Proud, OneSide, Wavy} {
		var fair any
		for _, at := range Stands() {
			none, err := See(f, kind, 0, at)
			if err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(none.Fair, none.Faulty) {
				t.Errorf("%v from the %v: no fault, and another boat", kind, at)
			}
			s, err := See(f, kind, 10, at)
			if err != nil {
				t.Fatal(err)
			}
			if fair == nil {
				fair = s.Fair
			}
			if !reflect.DeepEqual(s.Fair, fair) {
				t.Errorf("%v from the %v: the fair boat is another", kind, at)
			}
			most := 0.0
			for i, l := range s.Faulty.Lines {
				for k, p := range l.Points {
					most = math.Max(most, p.Sub(s.Fair.Lines[i].Points[k]).Norm())
				}
			}
			// Ribs are as thick as they are, and turn a little with their middle line.
			if most < 9.5 || most > 11.5 {
				t.Errorf("%v from the %v: places have moved by up to %.1f mm, want 10", kind, at, most)
			}
			beyond := map[Stand]func(p geometry.Point3) bool{
				AtBow:   func(p geometry.Point3) bool { return p.X > f.Hull.Bow.Tip()+500 },
				AtStern: func(p geometry.Point3) bool { return p.X < -f.Hull.Stern.Tip()-500 },
				Abeam:   func(p geometry.Point3) bool { return p.X == 0 && p.Y == f.Hull.Length },
			}[at]
			if !beyond(s.Eye.At) {
				t.Errorf("%v from the %v: the eye is at %v", kind, at, s.Eye.At)
			}
		}
	}
}
