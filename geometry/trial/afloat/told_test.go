package afloat

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/design"
)

// after reads figures from a finding's text, from certain words on.
func after(t *testing.T, text, words, form string, into ...any) {
	t.Helper()
	_, rest, found := strings.Cut(text, words)
	if !found {
		t.Fatalf("%q does not say %q", text, words)
	}
	if _, err := fmt.Sscanf(rest, form, into...); err != nil {
		t.Fatalf("%q after %q: %v", text, words, err)
	}
}

// TestCapacityFinding loads every boat with what it is told to hold, spread as now:
// six inches of freeboard are left, 152.4 mm, and the cautious figure beside it is
// 40 % less.
func TestCapacityFinding(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		b := boatOf(t, d)
		r, err := Run(b, options(t))
		if err != nil {
			t.Fatal(err)
		}
		text := r.about("capacity")
		var most, cautious float64
		if _, err := fmt.Sscanf(text, "%f kg, besides the boat", &most); err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		after(t, text, "some paddlers take 40 % off (", "%f kg)", &cautious)
		if math.Abs(cautious-0.6*most) > 1 {
			t.Errorf("%s: 40 %% off %.0f kg is told as %.0f", name, most, cautious)
		}
		if !strings.Contains(text, "6 in (152 mm)") {
			t.Errorf("%s: %q does not say at what freeboard", name, text)
		}
		k := most / r.payload()
		for _, i := range b.Aboard() {
			for j := range i.Loads {
				i.Loads[j].Mass *= k
			}
		}
		l := b.Load()
		p, _, err := b.Hull.Balance(l, options(t).Water.Density, 0, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := b.Hull.Freeboard(p).Least; math.Abs(got-6*25.4) > 1 {
			t.Errorf("%s: %.0f kg leave %.1f mm, want 152.4", name, most, got)
		}
	}
}

// TestLeanFinding: a weight m moved aside by d heels a boat of mass M until its
// righting lever is m d cos(heel) / M; the code for small passenger craft that is
// named allows 7 degrees (UK, 11.4.1).
func TestLeanFinding(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := run(t, shipped(t, name))
		text := r.about("leaning out")
		_, l := heaviest(r.Boat.Crew)
		var moves, heel, least, far, allowed float64
		after(t, text, "so that their weight moves ", "%f mm heels the boat %f deg and leaves %f mm of freeboard; held stiff, %f mm", &moves, &heel, &least, &far)
		after(t, text, "A code for small passenger craft stops at ", "%f deg", &allowed)
		if allowed != 7 {
			t.Errorf("%s: the code is said to stop at %g deg", name, allowed)
		}
		for i := 1; i < len(r.Curve.Levers); i++ {
			a, b := r.Curve.Levers[i-1], r.Curve.Levers[i]
			if h := heel * math.Pi / 180; a.Heel < h && h <= b.Heel {
				gz := a.GZ + (b.GZ-a.GZ)*(h-a.Heel)/(b.Heel-a.Heel)
				if want := l.Mass * moves * math.Cos(h) / r.Load.Mass; math.Abs(gz/want-1) > 0.03 {
					t.Errorf("%s: at %.1f deg the lever is %.1f mm, %.0f kg moved %.0f mm want %.1f", name, heel, gz, l.Mass, moves, want)
				}
			}
		}
		if moves < 25 || moves > 100 || far <= moves || least >= r.Rest.Freeboard.Least {
			t.Errorf("%s: %q", name, text)
		}
	}
}

// TestEffortFinding: the speeds are those at which the boat takes the power that
// stands beside them, in km/h; effort climbs from a Froude number of 0.40 on, v over
// the root of g times the waterline.
func TestEffortFinding(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := run(t, shipped(t, name))
		var told []string
		for _, f := range r.Findings {
			if f.About == "effort" {
				told = append(told, f.Text)
			}
		}
		if len(told) != 2 {
			t.Fatalf("%s: %q", name, told)
		}
		people := float64(len(r.Boat.People))
		for _, words := range []string{"keeps up about", "an hour's hard work,"} {
			var kmh, watts float64
			after(t, told[0], words, "%f km/h", &kmh)
			if words == "keeps up about" {
				fmt.Sscanf(told[0], "%f W", &watts)
			} else {
				after(t, told[0], "km/h; ", "%f W", &watts)
			}
			if want := 3.6 * r.Hull.SpeedAt(r.Options.Water, watts*people); watts == 0 || math.Abs(kmh-want) > 0.051 {
				t.Errorf("%s: %g W give %.2f km/h, told %.1f", name, watts, want, kmh)
			}
		}
		var kmh, froude, long float64
		after(t, told[1], "past ", "%f km/h (Froude number %f on %f m", &kmh, &froude, &long)
		if want := 3.6 * froude * math.Sqrt(9.80665*long); math.Abs(kmh-want) > 0.06 {
			t.Errorf("%s: Froude number %g on %g m is %.2f km/h, told %.1f", name, froude, long, want, kmh)
		}
	}
}

// TestJacketsFinding: a life jacket for each person aboard, always told.
func TestJacketsFinding(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		text := run(t, d).about("on board")
		want := "a wearable life jacket for each person"
		if n := len(d.Crew); n > 1 {
			want = fmt.Sprintf("%d wearable life jackets, one for each person", n)
		}
		if !strings.Contains(text, want) || !strings.Contains(text, "local law") {
			t.Errorf("%s: %q, want %q", name, text, want)
		}
	}
}

// TestWhere names the third of the boat that a station lies in: midship amidships, a
// quarter of the length from midship at a quarter, the ends at the ends, and each
// side by its own end.
func TestWhere(t *testing.T) {
	r := run(t, shipped(t, "lake"))
	aft, fore := r.Boat.Hull.Ends()
	mid, half := (aft+fore)/2, (fore-aft)/2
	for share, want := range map[float64]string{0: "amidships", 0.1: "amidships", -0.1: "amidships", 0.5: "at the bow quarter", 0.3: "at the bow quarter",
		-0.5: "at the stern quarter", 0.9: "at the bow", 1: "at the bow", -1: "at the stern", -0.8: "at the stern"} {
		if got := r.where(mid + share*half); got != want {
			t.Errorf("%g of the half length is %q, want %q", share, got, want)
		}
	}
}

// TestFreeboardAsked: at the very freeboard that is asked for a boat is not told to
// change, and a millimetre more is told with the depth that is wanting.
func TestFreeboardAsked(t *testing.T) {
	d := shipped(t, "lake")
	b := boatOf(t, d)
	o := options(t)
	r, err := Run(b, o)
	if err != nil {
		t.Fatal(err)
	}
	for more, needs := range map[float64]bool{0: false, -30: false, 1: true, 40: true} {
		o.Freeboard = math.Round(r.Rest.Freeboard.Least) + more
		again, err := Run(b, o)
		if err != nil {
			t.Fatal(err)
		}
		text := again.about("freeboard")
		if strings.Contains(text, " needs ") != needs || !strings.Contains(text, fmt.Sprintf("%.0f mm", o.Freeboard)) {
			t.Errorf("%.1f mm there, %.0f asked: %q", r.Rest.Freeboard.Least, o.Freeboard, text)
		}
	}
}
