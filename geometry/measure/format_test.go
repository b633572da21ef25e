package measure

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

func TestMM(t *testing.T) {
	for _, row := range []struct {
		name     string
		mm       float64
		decimals int
		want     string
	}{ // arithmetic
		{"fixed", 375, 1, "375.0"},
		{"rounds", 4264.025, 1, "4264.0"},
		{"no decimals", 12.7, 0, "13"},
		{"fewer than none", 12.7, -3, "13"},
		{"below zero", -0.26, 1, "-0.3"},
		{"no minus zero", -0.04, 1, "0.0"},
		{"no minus zero, whole", -0.4, 0, "0"},
		{"minus zero itself", math.Copysign(0, -1), 2, "0.00"},
		{"large", 1e15, 1, "1000000000000000.0"},
		{"not a number", math.NaN(), 1, "?"},
		{"infinite", math.Inf(-1), 1, "?"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := MM(row.mm, row.decimals); got != row.want {
				t.Errorf("MM(%g, %d) = %q, want %q", row.mm, row.decimals, got, row.want)
			}
		})
	}
}

func TestInchText(t *testing.T) {
	const in = 25.4
	for _, row := range []struct {
		name       string
		mm         float64
		sixteenths string
		feet       string
	}{ // arithmetic on the inch of 25.4 mm
		{"zero", 0, "0 in", `0"`},
		{"minus zero", math.Copysign(0, -1), "0 in", `0"`},
		{"almost zero", -0.7, "0 in", `0"`},
		{"sixteenth", in / 16, "1/16 in", `1/16"`},
		{"half of a sixteenth", in / 32, "1/16 in", `1/16"`},
		{"reduced", 14.75 * in, "14 3/4 in", `1'-2 3/4"`},
		{"below zero", -14.75 * in, "-14 3/4 in", `-1'-2 3/4"`},
		{"under a foot", 7.875 * in, "7 7/8 in", `7 7/8"`},
		{"carries to an inch", 7.97 * in, "8 in", `8"`},
		{"carries to a foot", (11 + 31.0/32) * in, "12 in", `1'-0"`},
		{"carries from inches to feet", (23 + 63.0/64) * in, "24 in", `2'-0"`},
		{"does not carry", (11 + 15.0/16) * in, "11 15/16 in", `11 15/16"`},
		{"hull length", 4264.025, "167 7/8 in", `13'-11 7/8"`},
		{"feet and a fraction", 1543.05, "60 3/4 in", `5'-0 3/4"`},
		{"whole feet", 3048, "120 in", `10'-0"`},
		{"not a number", math.NaN(), "?", "?"},
		{"infinite", math.Inf(1), "?", "?"},
		{"beyond counting", -1e300, "?", "?"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := Sixteenths(row.mm); got != row.sixteenths {
				t.Errorf("Sixteenths(%g) = %q, want %q", row.mm, got, row.sixteenths)
			}
			if got := FeetInches(row.mm); got != row.feet {
				t.Errorf("FeetInches(%g) = %q, want %q", row.mm, got, row.feet)
			}
		})
	}
}

// Every odd 1/32 in is a tie and must go away from zero, whatever float64
// makes of 25.4.
func TestInchTies(t *testing.T) {
	for n := 0; n < 20000; n++ {
		mm := float64(2*n+1) * 25.4 / 32
		if got, _, _ := parts(mm, 16); got != int64(n+1) {
			t.Fatalf("%d/32 in rounds to %d/16, want %d/16", 2*n+1, got, n+1)
		}
	}
}

// What is printed must be readable again, and within half a sixteenth.
func TestInchTextReadsBack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 5000 {
		mm := (2*rnd.Float64() - 1) * 6000
		for _, s := range []string{Sixteenths(mm), FeetInches(mm)} {
			l, err := ParseLength(s)
			if err != nil {
				t.Fatal(err)
			}
			if d := math.Abs(float64(l) - mm); d > 25.4/32+1e-9 {
				t.Errorf("%g mm prints as %q, off by %g mm", mm, s, d)
			}
		}
	}
}

// TestGauged: by arithmetic, 25.4 mm to the inch; what calipers measure, to the thousandth.
func TestGauged(t *testing.T) {
	for mm, want := range map[float64]string{
		5.8: "0.228 in", 5.84: "0.228 in", 6.1: "0.240 in", 0.2: "0.008 in", 0.3: "0.012 in", 20: "0.787 in", 10: "0.394 in", -3.7: "-0.146 in",
		6.35: "1/4 in", 19.05: "3/4 in", 50.7: "1.996 in", 50.9: "2 in", 752: "29 5/8 in", 0: "0 in", 0.04: "0 in", -0.04: "0 in", math.NaN(): "?", math.Inf(-1): "?",
	} {
		if got := Gauged(mm); got != want {
			t.Errorf("%g mm: %q, want %q", mm, got, want)
		}
	}
}

// Two sizes a tenth of a millimeter apart never share a number of inches, as far as calipers go.
func TestGaugedApart(t *testing.T) {
	last := Gauged(-50.7)
	for tenth := -506; tenth <= 507; tenth++ {
		mm := float64(tenth) / 10
		got := Gauged(mm)
		if got == last {
			t.Errorf("%.1f mm: %q, as the tenth before", mm, got)
		}
		if l, err := ParseLength(got); err != nil || math.Abs(float64(l)-mm) > 0.0127+1e-9 {
			t.Errorf("%.1f mm: %q is %v, %v", mm, got, l, err)
		}
		last = got
	}
}

// TestDrill: the nearest 64th, from 3/8 in on the nearest sixteenth, by arithmetic.
func TestDrill(t *testing.T) {
	for mm, want := range map[float64]string{
		2: "5/64 in (2.0 mm)", 2.5: "3/32 in (2.5 mm)", 3.5: "9/64 in (3.5 mm)", 4: "5/32 in (4.0 mm)", 5: "13/64 in (5.0 mm)",
		6: "15/64 in (6.0 mm)", 6.4: "1/4 in (6.4 mm)", 8.5: "21/64 in (8.5 mm)", 10: "3/8 in (10.0 mm)", 12.5: "1/2 in (12.5 mm)", math.Inf(1): "? (? mm)",
	} {
		if got := Imperial.Drill(mm); got != want {
			t.Errorf("%g mm: %q, want %q", mm, got, want)
		}
	}
	if got := Metric.Drill(3.5); got != "3.5 mm" {
		t.Errorf("metric: %q", got)
	}
}

func TestSystem(t *testing.T) {
	for _, row := range []struct {
		text string
		want System
		ok   bool
	}{
		{"metric", Metric, true}, {" Imperial ", Imperial, true}, {"IMPERIAL", Imperial, true},
		{"", Metric, false}, {"inches", Metric, false},
	} {
		got, err := ParseSystem(row.text)
		if got != row.want || (err == nil) != row.ok {
			t.Errorf("ParseSystem(%q) = %v, %v", row.text, got, err)
		}
		if err != nil {
			checkError(t, err, "write metric or imperial")
		}
	}
	if s := fmt.Sprint(Metric, Imperial, System(9)); s != "metric imperial unknown" {
		t.Errorf("the systems show as %q", s)
	}
}

func TestSystemLength(t *testing.T) {
	for _, row := range []struct {
		name     string
		mm       float64
		metric   string
		imperial string
	}{ // arithmetic
		{"whole", 375, "375 mm", `1'-2 3/4" (375 mm)`},
		{"one decimal", 374.65, "374.6 mm", `1'-2 3/4" (374.6 mm)`}, // the float64 lies just below the tie
		{"decimal that rounds away", 374.96, "375 mm", `1'-2 3/4" (375 mm)`},
		{"below zero", -457.2, "-457.2 mm", `-1'-6" (-457.2 mm)`},
		{"nearly zero", -0.01, "0 mm", `0" (0 mm)`},
		{"not a number", math.NaN(), "?", "?"},
		{"infinite", math.Inf(1), "?", "?"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := Metric.Length(row.mm); got != row.metric {
				t.Errorf("Metric.Length(%g) = %q, want %q", row.mm, got, row.metric)
			}
			if got := Imperial.Length(row.mm); got != row.imperial {
				t.Errorf("Imperial.Length(%g) = %q, want %q", row.mm, got, row.imperial)
			}
		})
	}
}

func ExampleFeetInches() {
	fmt.Println(FeetInches(4264), Sixteenths(374.65), Imperial.Length(375))
	// Output: 13'-11 7/8" 14 3/4 in 1'-2 3/4" (375 mm)
}

// TestWithin: down to whole millimeters, or sixteenths of 1.5875 mm, never to nothing,
// and a twentieth of a millimeter is not missed.
func TestWithin(t *testing.T) {
	for mm, want := range map[float64][2]string{2.96: {"3 mm", "1/16 in"}, 3.13: {"3 mm", "1/8 in"}, 2.94: {"2 mm", "1/16 in"}, 3.9: {"3 mm", "1/8 in"}, 0.5: {"1 mm", "1/16 in"}, 25.4: {"25 mm", "1 in"}} {
		if got := [2]string{Metric.Within(mm), Imperial.Within(mm)}; got != want {
			t.Errorf("%g mm: %q, want %q", mm, got, want)
		}
	}
}

// TestRough: to the nearest 5 mm, and to the nearest quarter of an inch with its mm
// behind it. 743.2 mm is 29.26 in.
func TestRough(t *testing.T) {
	for _, c := range []struct {
		mm               float64
		metric, imperial string
	}{
		{743.2, "745 mm", "29 1/4 in (743 mm)"}, {742.4, "740 mm", "29 1/4 in (743 mm)"}, {0, "0 mm", "0 in (0 mm)"},
		{254, "255 mm", "10 in (254 mm)"}, {math.NaN(), "? mm", "? (? mm)"},
	} {
		if got := Metric.Rough(c.mm); got != c.metric {
			t.Errorf("%g mm is %q, want %q", c.mm, got, c.metric)
		}
		if got := Imperial.Rough(c.mm); got != c.imperial {
			t.Errorf("%g mm is %q, want %q", c.mm, got, c.imperial)
		}
	}
}
