package cutlist

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// randomFrames builds boats of random sizes on the shipped designs, with random
// boards named for some of their woods; those that cannot be built are passed over.
func randomFrames(t *testing.T, want int) []*frame.Frame {
	t.Helper()
	random := rand.New(rand.NewPCG(2, 77))
	between := func(lo, hi float64) measure.Length {
		return measure.Length(math.Round((lo+(hi-lo)*random.Float64())*10) / 10)
	}
	var out []*frame.Frame
	for tries := 0; len(out) < want && tries < 20*want; tries++ {
		d, err := design.Shipped(design.ShippedNames()[random.IntN(3)])
		if err != nil {
			t.Fatal(err)
		}
		scale := 0.8 + 0.5*random.Float64()
		stretched := func(v *measure.Length) { *v = measure.Length(float64(*v) * scale) }
		stretched(&d.Hull.Length)
		stretched(&d.Hull.KeelStraight)
		for i := range d.Hull.Spreaders {
			stretched(&d.Hull.Spreaders[i].At)
		}
		for i := range d.Hull.Sections {
			stretched(&d.Hull.Sections[i].At)
		}
		d.Gunwale.Scarfs = nil
		d.Thwarts = d.Thwarts[:min(len(d.Thwarts), random.IntN(2))]
		fromPlank(d)
		d.Ribs.Pitch, d.Keel.Width, d.Gunwale.Plies = between(100, 170), between(30, 60), 1+random.IntN(4)
		d.Stock.Kerf, d.Stock.Boards = between(0, 6), nil
		for _, s := range []string{d.Gunwale.Species, d.Ribs.Species} {
			for range random.IntN(3) {
				d.Stock.Boards = append(d.Stock.Boards, design.Board{Species: s, Length: between(1500, 5000), Width: between(90, 300),
					Thickness: between(18, 60), Count: random.IntN(4), Price: new(math.Round(random.Float64() * 40))})
			}
		}
		if d.Check() != nil {
			continue
		}
		if f, err := frame.Build(d); err == nil {
			out = append(out, f)
		}
	}
	if len(out) < want {
		t.Fatalf("only %d of %d random boats could be built", len(out), want)
	}
	return out
}

// fromPlank saws the stems from a plank: those of plywood are no sticks.
func fromPlank(d *design.Design) { d.Bow.Made = design.StemsSolid }

// TestPlywoodStems: stems of plywood are in no board.
func TestPlywoodStems(t *testing.T) {
	solid, sheet := len(Heat(nil).Sticks(frametest.Shipped(t, "lake", fromPlank))), len(Heat(nil).Sticks(frametest.Shipped(t, "lake", nil)))
	if solid != sheet+2 {
		t.Errorf("%d sticks with stems from a plank, %d with stems from plywood", solid, sheet)
	}
}

func everyFrame(t *testing.T, check func(t *testing.T, f *frame.Frame, p *Plan)) {
	t.Helper()
	var all []*frame.Frame
	for _, name := range design.ShippedNames() {
		all = append(all, frametest.Shipped(t, name, fromPlank))
	}
	for i, f := range append(all, randomFrames(t, 15)...) {
		t.Run(fmt.Sprintf("%d %s %.0f", i, f.Design.Title, f.Hull.Length), func(t *testing.T) { check(t, f, Heat(nil).Make(f)) })
	}
}

// TestEachStickOnce: every part of the frame is in the list once, every stick of
// the list is sawn once, whole or in all its pieces, or is named as missing.
func TestEachStickOnce(t *testing.T) {
	everyFrame(t, func(t *testing.T, f *frame.Frame, p *Plan) {
		want := 2*f.Design.Gunwale.Plies + len(f.Ribs) + f.Design.Ribs.Spare + 2 + 1 + 2*len(f.Stringers) + 2 + len(f.Thwarts)
		for _, s := range p.Sticks {
			if s.Edge && !strings.HasSuffix(s.Mark, "-1") {
				want++ // a stave beside the first
			}
		}
		if len(p.Sticks) != want {
			t.Errorf("%d sticks, the frame has %d", len(p.Sticks), want)
		}
		marks := map[string]bool{}
		for _, s := range p.Sticks {
			if marks[s.Mark] {
				t.Errorf("two sticks are marked %s", s.Mark)
			}
			marks[s.Mark] = true
		}
		sawn := map[Piece]int{}
		for _, w := range p.Woods {
			for _, b := range w.Boards {
				for _, piece := range b.Pieces() {
					sawn[piece]++
					if s := p.Sticks[piece.Stick].Species; s != w.Species {
						t.Errorf("a piece of %s is sawn from %s", s, w.Species)
					}
				}
			}
		}
		missing := map[int]bool{}
		for _, m := range p.Missing() {
			missing[m.Stick] = true
		}
		for i, c := range p.Cuttings {
			long, all := 0.0, len(c.Pieces) > 0
			for _, piece := range c.Pieces {
				long += piece.Length
				all = all && sawn[piece] == 1
			}
			for _, j := range c.Joints {
				long -= j.Length
			}
			if missing[i] == all && all || !missing[i] && (!all || math.Abs(long-p.Sticks[i].Length) > 1e-6) {
				t.Errorf("%s of %.1f mm: missing %v, all pieces sawn once %v, they make %.1f mm", p.Sticks[i].Part, p.Sticks[i].Length, missing[i], all, long)
			}
		}
	})
}

// TestSpareRibs: a spare blank replaces any rib, stays out of the boat, and is as many
// times there as the design says, six by default.
func TestSpareRibs(t *testing.T) {
	for _, n := range []int{-1, 0, 3, 6} {
		f := frametest.Shipped(t, "lake", func(d *design.Design) {
			if n >= 0 {
				d.Ribs.Spare = n
			}
		})
		want, spare := n, 0
		if n < 0 {
			want = 6
		}
		longest := 0.0
		for _, r := range f.Ribs {
			longest = math.Max(longest, r.Blank)
		}
		for _, s := range Heat(nil).Sticks(f) {
			if s.Spare {
				spare++
				if s.Net != 0 || s.Length != longest || s.Family != Rib || s.Width != float64(f.Design.Ribs.Width) || s.Thickness != float64(f.Design.Ribs.Thickness) {
					t.Errorf("%+v, the longest blank is %.1f mm", s, longest)
				}
			}
		}
		if spare != want {
			t.Errorf("%d spare ribs, want %d", spare, want)
		}
	}
}

// TestBoardsHold measures every board: rips side by side with the saw and the
// plane between them, layers over each other, pieces end to end, none in the last 25 mm of
// either end, where boards have checks.
func TestBoardsHold(t *testing.T) {
	everyFrame(t, func(t *testing.T, f *frame.Frame, p *Plan) {
		for _, w := range p.Woods {
			for _, b := range w.Boards {
				holds(t, p, b.Rips, b.Board.Width, b.Board.Length-2*25, b.Board.Thickness)
			}
			if w.Least > w.Bought*(1+1e-9) {
				t.Errorf("%s: the bound %.1f l is above what is bought, %.1f l", w.Species, w.Least/1e6, w.Bought/1e6)
			}
		}
	})
}

func holds(t *testing.T, p *Plan, rips []RipCut, wide, long, thick float64) {
	t.Helper()
	across := -(p.Kerf + Dressing)
	for _, r := range rips {
		across += r.Across + p.Kerf + Dressing
		high := -(p.Kerf + Dressing)
		end := long
		for _, l := range r.Layers {
			used, tall := -p.Kerf, 0.0
			for _, piece := range l {
				s := p.Sticks[piece.Stick]
				used += piece.Length + p.Kerf
				a, b := s.Width, s.Thickness
				if math.Abs(b-r.Across) < 1e-9 {
					a, b = b, a
				}
				if a > r.Across+1e-9 {
					t.Errorf("%s is %.1f mm wide in a rip of %.1f mm", s.Part, a, r.Across)
				}
				tall = math.Max(tall, b)
			}
			if used > long+1e-6 {
				t.Errorf("a strip holds %.2f mm in %.2f mm", used, long)
			}
			end = long - used - p.Kerf
			high += tall + p.Kerf + Dressing
		}
		if high > thick+1e-6 && len(r.Layers) > 1 {
			t.Errorf("%d layers take %.2f mm of %.2f mm", len(r.Layers), high, thick)
		}
		if len(r.Rest) > 0 {
			holds(t, p, r.Rest, r.Across, end, thick)
		}
	}
	if across > wide+1e-6 {
		t.Errorf("rips take %.2f mm of a width of %.2f mm", across, wide)
	}
}

// TestNeverWorse holds every plan to the same by first-fit decreasing alone: no more
// sticks without wood, no more scarfs, and then no more spent, by price where all
// boards have one, else by volume. Of boards of one size that is: no more boards.
func TestNeverWorse(t *testing.T) {
	less := 0
	everyFrame(t, func(t *testing.T, f *frame.Frame, p *Plan) {
		plain := Heat(nil).plan(f, nil, firstFitOnly, searched)
		for i, w := range p.Woods {
			o := plain.Woods[i]
			a := [3]float64{float64(len(w.Missing)), scarfsOf(p, w.Species), spent(w)}
			b := [3]float64{float64(len(o.Missing)), scarfsOf(plain, w.Species), spent(o)}
			for k := range a {
				if a[k] > b[k]*(1+1e-9) {
					t.Errorf("%s: missing, scarfs, spent %v; by first-fit decreasing %v", w.Species, a, b)
				}
				if a[k] != b[k] {
					less++
					break
				}
			}
		}
	})
	t.Logf("better than first-fit decreasing %d times", less)
}

func scarfsOf(p *Plan, species string) float64 {
	n := 0
	for i, c := range p.Cuttings {
		if p.Sticks[i].Species == species {
			n += len(c.Joints)
		}
	}
	return float64(n)
}

func spent(w Wood) float64 {
	sum := 0.0
	for _, b := range w.Boards {
		if !b.Board.Priced {
			return w.Bought
		}
		sum += b.Board.Price
	}
	return sum
}

// TestScarfs measures every scarf: at the design's slope, out of mortises and of the
// middle third of a gunwale, off the ribs of a batten, three scarf lengths from the
// next in its stick (AC 43.13-1B) and one from those beside it.
func TestScarfs(t *testing.T) {
	met := 0
	everyFrame(t, func(t *testing.T, f *frame.Frame, p *Plan) {
		beside := map[string][]Joint{}
		for i, c := range p.Cuttings {
			s := p.Sticks[i]
			for k, j := range c.Joints {
				met++
				if want := f.Design.Gunwale.ScarfSlope * s.Thickness; math.Abs(j.Length-want) > 1e-9 {
					t.Errorf("%s: a scarf of %.1f mm, want %.1f", s.Part, j.Length, want)
				}
				for _, o := range c.Joints[:k] {
					if gap := math.Abs(j.Middle-o.Middle) - j.Length; gap < 3*j.Length-1e-6 {
						t.Errorf("%s: scarfs %.1f mm apart", s.Part, gap)
					}
				}
				for _, o := range beside[s.Run.Beside] {
					if gap := math.Abs(j.Middle-o.Middle) - (j.Length+o.Length)/2; gap < j.Length-1e-6 {
						t.Errorf("%s: a scarf lies %.1f mm from one beside it", s.Part, gap)
					}
				}
				offRibs(t, f, s, j)
			}
			if s.Run != nil {
				beside[s.Run.Beside] = append(beside[s.Run.Beside], c.Joints...)
			}
		}
	})
	if met < 60 {
		t.Errorf("only %d scarfs were met", met)
	}
	t.Logf("%d scarfs", met)
}

func offRibs(t *testing.T, f *frame.Frame, s Stick, j Joint) {
	t.Helper()
	from, to := j.Middle-j.Length/2, j.Middle+j.Length/2
	switch s.Family {
	case Gunwale:
		for _, m := range f.Gunwale.Mortises {
			if lo, hi := m.Ends(); from < hi && to > lo {
				t.Errorf("%s: the scarf from %.0f to %.0f mm lies on mortise %s", s.Part, from, to, m.Rib)
			}
		}
		third := (f.Gunwale.Fore - f.Gunwale.Aft) / 3
		if to > f.Gunwale.Aft+third+1e-6 && from < f.Gunwale.Fore-third-1e-6 {
			t.Errorf("%s: the scarf at %.0f mm lies in the middle third", s.Part, j.Middle)
		}
	case Keel:
		offMarks(t, f, s, f.Keel.RibMarks, from, to)
	case Stringer:
		for _, b := range f.Stringers {
			if strings.HasSuffix(s.Part, fmt.Sprintf(" %d", b.Number)) {
				offMarks(t, f, s, b.RibMarks, from, to)
			}
		}
	}
}

func offMarks(t *testing.T, f *frame.Frame, s Stick, marks []float64, from, to float64) {
	t.Helper()
	for _, m := range marks {
		if half := float64(f.Design.Ribs.Width) / 2; from < m+half-1e-6 && to > m-half+1e-6 {
			t.Errorf("%s: the scarf from %.0f to %.0f mm lies on the rib at %.0f mm", s.Part, from, to, m)
		}
	}
}

// TestVolumes: the wood of the cut list weighs what the frame's parts weigh in the
// boat's list of weights, which is worked out on its own from lines and sections.
func TestVolumes(t *testing.T) {
	everyFrame(t, func(t *testing.T, f *frame.Frame, p *Plan) {
		boat, outfits, err := p.Finished(f.Design)
		if err != nil || outfits != (Finished{}) {
			t.Fatalf("%+v of outfits, %v", outfits, err)
		}
		got := boat.Mass
		cloth, err := skin.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		items, err := weight.Boat(f, cloth)
		if err != nil {
			t.Fatal(err)
		}
		want := 0.0
		for _, i := range items[:6] { // the wooden ones
			want += i.Load().Mass
		}
		if math.Abs(got/want-1) > 1e-3 {
			t.Errorf("the cut list weighs %.3f kg, the frame %.3f kg", got, want)
		}
	})
}

// TestByHand weighs the plain sticks of Brook from its design file: keel 40 x 12 mm,
// rib 20 x 6 mm with tenons of 18 mm.
func TestByHand(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	for _, s := range Heat(nil).Sticks(f) {
		want := s.Net
		switch s.Family {
		case Keel:
			want = 40 * 12 * (f.Keel.Fore - f.Keel.Aft)
		case Rib:
			for _, r := range f.Ribs {
				if s.Mark == "R-"+r.Name {
					want = 20 * 6 * (r.Length + 36)
				}
			}
		}
		if math.Abs(s.Net-want) > 1 {
			t.Errorf("%s: %.0f mm3, want %.0f", s.Part, s.Net, want)
		}
		if s.Net > s.Length*s.Width*s.Thickness {
			t.Errorf("%s: more wood than it is sawn from", s.Part)
		}
	}
}

// TestImpossible names what no board gives and says why.
func TestImpossible(t *testing.T) {
	for _, c := range []struct {
		name   string
		boards []design.Board
		mark   string
		why    string
	}{
		{"too thin", []design.Board{{Species: "white ash", Length: 3000, Width: 300, Thickness: 15}}, "T1", "no board named is wide and thick enough"},
		{"too short", []design.Board{{Species: "white ash", Length: 900, Width: 300, Thickness: 25}}, "R-F1", "must be one piece; the longest board gives 850 mm"},
		{"too few", []design.Board{{Species: "white ash", Length: 1300, Width: 120, Thickness: 25, Count: 1}}, "R-A11", "the boards named are used up"},
		{"no room to scarf", []design.Board{{Species: "western redcedar", Length: 600, Width: 300, Thickness: 40}}, "G1", "no place for a scarf"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := Heat(nil).Make(frametest.Shipped(t, "brook", func(d *design.Design) { fromPlank(d); d.Stock.Boards = c.boards }))
			for _, m := range p.Missing() {
				if p.Sticks[m.Stick].Mark == c.mark && strings.Contains(m.Why, c.why) {
					return
				}
			}
			t.Errorf("%s is not named as missing because %q; missing: %+v", c.mark, c.why, p.Missing())
		})
	}
}

// TestScarfLengthOfStock: two pieces for 4880 mm at 1:8 in 19 mm stock take 5032
// mm. Source: arithmetic of general joinery, length + scarf.
func TestScarfLengthOfStock(t *testing.T) {
	run := &Run{Aft: -2440, Fore: 2440, Scarf: 8 * 19, Rooms: []frame.Zone{{From: -2400, To: 2400}}}
	m := maker{[]Stick{{Length: 4880, Run: run}}, map[string][]Joint{}, false}
	c, err := m.split(0, 3000)
	if err != nil || len(c.Pieces) != 2 {
		t.Fatalf("%+v %v, want 2 pieces", c, err)
	}
	if got := c.Pieces[0].Length + c.Pieces[1].Length; math.Abs(got-5032) > 1e-9 {
		t.Errorf("%.1f mm of stock, want 5032", got)
	}
}
