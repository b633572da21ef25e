package report

import (
	"math"
	"testing"

	"ribwright/geometry/measure"
)

// TestLetters: 4267.2 mm are 14 ft; 1 in is 25.4 mm; 1 lb is 0.45359237 kg; 1 knot is
// 1.852 km/h.
func TestLetters(t *testing.T) {
	mm, in := Letters{}, Letters{measure.Imperial}
	for _, row := range []struct{ name, got, want string }{
		{"length", mm.Length(4267.2), "4267 mm"}, {"length in feet", in.Length(4267.2), `14'-0"`},
		{"handy", mm.Handy(100), "100 mm"}, {"handy in inches", in.Handy(100), `4"`}, {"handy in quarters", in.Handy(60), `2 1/2"`}, {"handy as it is", in.Handy(76.2), `3"`},
		{"handy in whole inches", in.Handy(900), `3'-0"`}, {"handy in a foot", in.Handy(300), `1'-0"`},
		{"push", mm.Push(-23.4) + mm.Push(2), "-23+2"}, {"push in pounds", in.Push(-22.4) + in.Push(44.9) + in.Push(2), "-5+100"},
		{"gauge", mm.Gauge(5.8) + " " + in.Gauge(5.8), "5.8 0.228"}, {"drill", mm.Drill(2) + " " + in.Drill(2), "2.0 mm 5/64 in (2.0 mm)"},
		{"fine", mm.Fine(18.52), "18.5 mm"}, {"fine in inches", in.Fine(19.05), "3/4 in (19.1 mm)"},
		{"cell", mm.Cell(374.96), "375.0"}, {"cell in inches", in.Cell(374.65), "14 3/4"},
		{"cell at zero", mm.Cell(-0.01), "0.0"}, {"cell in inches at zero", in.Cell(-0.01), "0"},
		{"whole", mm.Whole(374.65), "375"}, {"whole in inches", in.Whole(374.65), "14 3/4"},
		{"mark", mm.Mark(25.4), "25.4"}, {"mark in inches", in.Mark(25.4), "1 (25.4)"},
		{"unit", mm.Unit() + in.Unit(), "mmin"}, {"marks", mm.Marks() + in.Marks(), "mmin (mm)"},
		{"mass", mm.Mass(9.44), "9.4 kg"}, {"mass in pounds", in.Mass(4.5359237), "10.0 lb"},
		{"forward", mm.Station(900), "900 mm forward"}, {"aft", in.Station(-914.4), `3'-0" aft`}, {"midship", mm.Station(0.04), "midship"},
		{"speed", mm.Speed(1.25), "4.5 km/h"}, {"speed in knots", in.Speed(1852.0 / 1800), "2.0 knots"},
		{"angle", Angle(math.Pi / 8), "22.5"}, {"angle at zero", Angle(-1e-6), "0.0"},
		{"signed", Signed(1.26) + Signed(-3), "+1-3"}, {"signed at zero", Signed(-0.04), "0"},
	} {
		if row.got != row.want {
			t.Errorf("%s: %q, want %q", row.name, row.got, row.want)
		}
	}
}
