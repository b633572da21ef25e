package rowing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/clip"
)

// rowed are shipped boats fitted for rowing with the seat where it balances and elsewhere, as
// they come and with other ribs and slats.
func rowed(t *testing.T, try func(name string, f *Fit)) {
	t.Helper()
	for _, boat := range design.ShippedNames() {
		for name, change := range map[string]func(*design.Design){
			boat:                      nil,
			boat + ", ribs elsewhere": func(d *design.Design) { d.Ribs.Pitch -= 11; d.Thwarts, d.Seats, d.Crew = nil, nil, nil },
			boat + ", three slats":    func(d *design.Design) { d.Inside.Slats = 3 },
			boat + ", no slats":       func(d *design.Design) { d.Inside.Slats = 0 },
		} {
			fr := frametest.Shipped(t, boat, change)
			b, err := aboard.New(fr, nil, fr.Design.Gear)
			if err != nil {
				t.Fatal(err)
			}
			for _, at := range []float64{0, -203, -77, 91, 214} {
				r := fr.Design.Row()
				r.SeatAt = measure.Length(at)
				f, err := New(b, r, fresh(t))
				if err != nil {
					continue // past the last rib
				}
				try(name, f)
			}
		}
	}
}

// face is the height of a rib's upper face so far from the middle line, on its drawn line.
func face(r frame.Rib, across float64) float64 {
	line := r.Inner.Flatten(0.01)
	for i := 1; i < len(line); i++ {
		if a, b := line[i-1], line[i]; a.X <= across && b.X >= across {
			return a.Lerp(b, (across-a.X)/(b.X-a.X)).Y
		}
	}
	return math.Inf(1)
}

// TestClipsClearRibs: the hook of a clip under each bar meets no rib's head and no cross
// piece, and both bars lie as near to their places as half a bay and a cross piece.
func TestClipsClearRibs(t *testing.T) {
	rowed(t, func(name string, f *Fit) {
		if told := slices.ContainsFunc(f.Findings, func(n finding.Finding) bool { return strings.HasPrefix(n.Text, "a clip finds no room") }); told == f.Clear {
			t.Errorf("%s, seat at %.0f: clear %v, told %v", name, f.SeatX, f.Clear, told)
		}
		if !f.Clear {
			if f.Row.SeatAt == 0 {
				t.Errorf("%s: no room for the clips", name)
			}
			return
		}
		for i, x := range f.Bars {
			c := clip.Lay(f.Boat.Frame, x)
			if !c.Clear(f.Boat.Frame) || math.Abs(x-f.LockX-Pitch/2*float64(1-2*i)) > 70 {
				t.Errorf("%s, seat at %.0f: a clip at %.1f", name, f.SeatX, x)
			}
			for _, w := range f.Boat.Frame.Thwarts {
				if half := w.Outline.Bounds().H() / 2; w.At+half > c.From && w.At-half < c.To {
					t.Errorf("%s: a clip at %.1f under %s", name, x, w.Name)
				}
			}
		}
	})
}

// TestCheeksStand: a cheek reaches over two ribs and more, one on either side of the seat's
// middle by a quarter of its breadth; it stands wholly on a slat that runs on, or beside all;
// its lower edge is where the ribs are drawn, its upper one under the seat.
func TestCheeksStand(t *testing.T) {
	on, beside := 0, 0
	rowed(t, func(name string, f *Fit) {
		c := f.Cheek
		first, last := c.Ribs[0].X, c.Ribs[len(c.Ribs)-1].X
		if len(c.Ribs) < 2 || first > f.SeatX-50 || last < f.SeatX+50 || c.Aft > first-10 || c.Fore < last+10 {
			t.Errorf("%s, seat at %.0f: a cheek from %.0f to %.0f on ribs %v", name, f.SeatX, c.Aft, c.Fore, c.Ribs)
		}
		slat := 0.0
		if c.Slat {
			slat, on = float64(f.Boat.Frame.Design.Inside.SlatThickness), on+1
		}
		for _, fl := range f.Boat.Places.Inside.Floors {
			for _, y := range fl.Across {
				lies := fl.Aft < c.Fore && fl.Fore > c.Aft && math.Abs(y-c.Across) < (fl.Wide+BoardThick)/2
				whole := math.Abs(y-c.Across) <= (fl.Wide-BoardThick)/2 && fl.Aft <= first && fl.Fore >= last
				if lies && !(whole && c.Slat) {
					t.Errorf("%s, seat at %.0f: a cheek %.1f mm off the middle line on the edge of a slat at %.1f", name, f.SeatX, c.Across, y)
				}
				if whole && !c.Slat {
					t.Errorf("%s: a cheek on a slat that it does not know of", name)
				}
			}
		}
		if !c.Slat {
			beside++
		}
		top := f.SeatZ - BoardThick
		for _, p := range f.CheekOutline() {
			for _, r := range f.Boat.Frame.Ribs {
				if math.Abs(r.Station-f.SeatX-p.X) < 1e-6 && f.low() == 0 {
					near(t, name+": under a cheek", top+p.Y, face(r, c.Across-BoardThick/2)+slat, 0.1)
				}
			}
		}
	})
	if on == 0 || beside == 0 {
		t.Errorf("%d cheeks on slats, %d beside: this shows nothing", on, beside)
	}
}

// TestFootrestFits: as far as its holes let it go aft, the board of a footrest lies between
// the ribs' upper faces with room beside it, at its lower edge, and its rails end on ribs.
func TestFootrestFits(t *testing.T) {
	fits := 0
	rowed(t, func(name string, f *Fit) {
		if !f.FootFits {
			return
		}
		fits++
		b, ribs := f.Foot, f.Boat.Frame.Ribs
		for _, at := range []float64{b.At, b.At - 75} {
			i := slices.IndexFunc(ribs, func(r frame.Rib) bool { return r.Station >= at })
			rail := func(r frame.Rib) float64 { _, kz := r.Section, face(r, 0); return face(r, b.Bar/2) - kz - b.RailTall }
			share := (at - ribs[i-1].Station) / (ribs[i].Station - ribs[i-1].Station)
			if high := rail(ribs[i-1])*(1-share) + rail(ribs[i])*share; high > 3 {
				t.Errorf("%s, seat at %.0f: a footrest of %.0f mm at %.0f stands %.1f mm in the ribs", name, f.SeatX, b.Bar, at, high)
			}
		}
		if b.HoleAt > b.At-inside.KneeHole || b.RailAft > b.HoleAt-75-20 || b.RailAft+b.Rail < b.HoleAt+75+20 || b.RailAft < ribs[0].Station-25 {
			t.Errorf("%s: knees at %.0f, a board at %.0f, rails from %.0f, %.0f mm long", name, b.HoleAt, b.At, b.RailAft, b.Rail)
		}
		if wide, _ := f.HeelSlat(); wide > 0 && 5+wide > b.KneeAcross()-b.RailWide/2 {
			t.Errorf("%s: slats of %.0f mm under the heels meet the knees", name, wide)
		}
	})
	if fits < 10 {
		t.Errorf("%d footrests fit", fits)
	}
}

// TestNearerBarBears: a rowlock a third of the way from one bar to the other leaves the nearer
// two thirds of what presses it down. Statics.
func TestNearerBarBears(t *testing.T) {
	f := fitted(t, "lake")
	wood, err := f.Boat.Frame.Design.Wood(f.Row.Species)
	if err != nil {
		t.Fatal(err)
	}
	s := bear(f.Oar, f.Span, f.Width, f.Apart(), f.Row.Pull, BarWide, f.BarThick, wood)
	share := math.Max(f.Bars[0]-f.LockX, f.LockX-f.Bars[1]) / f.Apart()
	near(t, "down", f.Strength.Upright, s.Upright/0.5*share, 1e-9)
	near(t, "along", f.Strength.Flat, s.Flat, 1e-9)
}
