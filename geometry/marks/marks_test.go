package marks

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/bend"
)

func built(t testing.TB, name string) (*frame.Frame, []Mark) {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	b, err := bend.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	all, err := Of(f, b)
	if err != nil {
		t.Fatal(err)
	}
	return f, all
}

// TestEveryMark: each has a name of its own, a finite value and a tolerance.
func TestEveryMark(t *testing.T) {
	for _, name := range design.ShippedNames() {
		_, all := built(t, name)
		seen := map[Name]bool{}
		for _, m := range all {
			if seen[m.Name] {
				t.Errorf("%s: %+v stands twice", name, m.Name)
			}
			seen[m.Name] = true
			if m.Part == "" || m.Quantity == "" || math.IsNaN(m.Value) || math.IsInf(m.Value, 0) || !(m.Tolerance > 0) || math.IsInf(m.Tolerance, 0) {
				t.Errorf("%s: %+v", name, m)
			}
			if m.Unit != Millimeter && m.Unit != Radian {
				t.Errorf("%s: %+v is in %q", name, m.Name, m.Unit)
			}
		}
		if len(Index(all)) != len(all) {
			t.Errorf("%s: %d marks are found by name, of %d", name, len(Index(all)), len(all))
		}
	}
}

// TestOrder: the parts stand in the order of the work, each in one piece, and a
// repeated quantity counts from 1.
func TestOrder(t *testing.T) {
	kinds := []string{"gunwale", "mortise ", "bow stem", "stern stem", "bow breasthook", "stern breasthook", "hull", "spreader ", "thwart ", "seat ", "rib ", "keel", "stringer ", "skin", "outwale", "keel strip", "painters", "floor ", "footbrace ", "backrest "}
	for _, name := range design.ShippedNames() {
		_, all := built(t, name)
		at, part := 0, ""
		done, last := map[string]bool{}, map[Name]int{}
		for _, m := range all {
			if m.Part != part {
				if done[m.Part] {
					t.Errorf("%s: %s stands in two places", name, m.Part)
				}
				part, done[m.Part] = m.Part, true
			}
			for at < len(kinds) && !strings.HasPrefix(m.Part, kinds[at]) {
				at++
			}
			if at == len(kinds) {
				t.Fatalf("%s: %s stands after its turn", name, m.Part)
			}
			key := Name{m.Part, m.Quantity, 0}
			if m.Number != 0 && m.Number <= last[key] {
				t.Errorf("%s: %+v stands after number %d", name, m.Name, last[key])
			}
			last[key] = m.Number
		}
	}
}

// TestMortisePlaces: a mortise lies as far from midship along the straight stock as
// the gunwale's line is long up to its station, added up here in short chords, less what
// the edge-set stretches.
func TestMortisePlaces(t *testing.T) {
	f, all := built(t, "brook")
	index := Index(all)
	for _, r := range f.Ribs {
		station := index[Name{"mortise " + r.Name, "station", 0}].Value
		if station != r.Station {
			t.Errorf("mortise %s at station %.3f, want %.3f", r.Name, station, r.Station)
		}
		const steps = 2000
		sum := 0.0
		for i := range steps {
			a := f.Gunwale.Line.Point(station * float64(i) / steps)
			b := f.Gunwale.Line.Point(station * float64(i+1) / steps)
			sum += math.Sqrt(math.Pow(b.X-a.X, 2) + math.Pow(b.Y-a.Y, 2) + math.Pow(b.Z-a.Z, 2))
		}
		// Springing in the edge-set, 30 mm of it from 600 mm out on, stretches the underside
		// of stock 36 mm tall by 18 mm times the slope of that parabola.
		run := f.Hull.Bow.GunwaleX - 600
		want := math.Copysign(sum-18*2*30*math.Max(0, math.Abs(station)-600)/run/run, station)
		if got := index[Name{"mortise " + r.Name, "from midship", 0}].Value; math.Abs(got-want) > 0.001 {
			t.Errorf("mortise %s is %.4f mm from midship, the line less what the edge-set stretches is %.4f mm long", r.Name, got, want)
		}
	}
}

// TestWalk goes along the arcs of each rib from the keel, level at first: they end at
// its half-breadth and depth, they turn through a right angle less the flare, and the
// bend marks part them on the blank.
func TestWalk(t *testing.T) {
	f, all := built(t, "brook")
	index := Index(all)
	for _, r := range f.Ribs {
		of := func(quantity string, n int) float64 { return index[Name{"rib " + r.Name, quantity, n}].Value }
		x, y, heading := 0.0, 0.0, 0.0
		for n := 1; index[Name{"rib " + r.Name, "arc length", n}].Unit != ""; n++ {
			radius, bent := index[Name{"rib " + r.Name, "arc radius", n}]
			if !bent {
				x, y = x+of("arc length", n)*math.Cos(heading), y+of("arc length", n)*math.Sin(heading)
				continue
			}
			turn := of("arc sweep", n)
			if got := of("arc length", n); math.Abs(got-radius.Value*turn) > 1e-9 {
				t.Errorf("rib %s: arc %d is %.4f mm long, radius times turn is %.4f", r.Name, n, got, radius.Value*turn)
			}
			x += radius.Value * (math.Sin(heading+turn) - math.Sin(heading))
			y -= radius.Value * (math.Cos(heading+turn) - math.Cos(heading))
			heading += turn
		}
		if math.Abs(x-of("half-breadth", 0)) > 1e-6 || math.Abs(y-of("depth", 0)) > 1e-6 {
			t.Errorf("rib %s ends at %.6f, %.6f, want %.6f, %.6f", r.Name, x, y, of("half-breadth", 0), of("depth", 0))
		}
		if want := math.Pi/2 - r.Section.Shape.Flare; math.Abs(heading-want) > 1e-9 {
			t.Errorf("rib %s turns through %.6f, want %.6f", r.Name, heading, want)
		}
		if got := of("bend mark", 1); got < of("arc length", 1) {
			t.Errorf("rib %s: the first bend ends at %.3f on the blank, before its %.3f mm", r.Name, got, of("arc length", 1))
		}
	}
}

// TestByHand holds marks of brook to its design file: slots 0.3 mm wider and longer
// than the ribs, tenons 2 mm shorter than the slots are deep, blanks a tenon and 12 mm
// longer at each end.
func TestByHand(t *testing.T) {
	f, all := built(t, "brook")
	d, index := f.Design, Index(all)
	rib := func(quantity string) float64 { return index[Name{"rib M", quantity, 0}].Value }
	slots := "mortise M"
	for _, c := range []struct {
		name      Name
		want, tol float64
	}{
		{Name{"hull", "length", 0}, 3500, 0},
		{Name{"gunwale", "width", 0}, float64(d.Gunwale.Width), 0},
		{Name{"gunwale", "ply thickness", 0}, float64(d.Gunwale.Width) / float64(d.Gunwale.Plies), 0},
		{Name{slots, "length", 0}, float64(d.Ribs.Width) + 0.3, 1e-9},
		{Name{slots, "width", 0}, float64(d.Ribs.Thickness) + 0.3, 1e-9},
		{Name{slots, "depth", 0}, float64(d.Ribs.MortiseDepth), 0},
		{Name{slots, "from midship", 0}, 0, 1e-9},
		{Name{"rib M", "tenon", 0}, float64(d.Ribs.MortiseDepth) - 2, 1e-9},
		{Name{"rib M", "blank", 0}, rib("length") + 2*rib("tenon") + 24, 1e-9},
		{Name{"rib M", "half-breadth", 0}, float64(d.Hull.Beam) / 2, 1e-6},
		{Name{"rib M", "depth", 0}, float64(d.Hull.Depth), 1e-6},
		{Name{"keel", "middle of rib M", 0}, 0, 1e-9},
	} {
		m, there := index[c.name]
		if !there || math.Abs(m.Value-c.want) > c.tol {
			t.Errorf("%+v: %.6f (listed %v), want %.6f", c.name, m.Value, there, c.want)
		}
	}
}

// ofJoint reports whether a mark is a hole of a joint, which needs the wood to be known.
func ofJoint(m Mark) bool {
	return m.Part == "rib peg" || !strings.HasPrefix(m.Quantity, "painter") && (strings.HasSuffix(m.Part, " stem") || strings.HasSuffix(m.Part, " breasthook")) && (strings.Contains(m.Quantity, "hole") || strings.Contains(m.Quantity, "peg") || strings.HasPrefix(m.Quantity, "screw"))
}

// TestWithoutBending leaves out what only bending knows, and nothing else.
func TestWithoutBending(t *testing.T) {
	f, with := built(t, "river")
	without, err := Of(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	var kept []Mark
	for _, m := range with {
		if m.Quantity != "form radius" && m.Quantity != "hot width" && m.Quantity != "relax to" && !strings.Contains(m.Quantity, "pushed in") && !ofJoint(m) {
			kept = append(kept, m)
		}
	}
	if len(kept) == len(with) || len(kept) != len(without) {
		t.Fatalf("%d marks with bending, %d without, want %d", len(with), len(without), len(kept))
	}
	for i := range kept {
		if kept[i] != without[i] {
			t.Errorf("%+v became %+v", kept[i], without[i])
		}
	}
}

// TestNotFinite refuses a number that no rule shows, by its name.
func TestNotFinite(t *testing.T) {
	f, _ := built(t, "brook")
	f.Ribs[1].Blank = math.NaN()
	if _, err := Of(f, nil); err == nil || !strings.Contains(err.Error(), "rib "+f.Ribs[1].Name+": blank") {
		t.Errorf("got %v", err)
	}
}

// TestBilgeSlack: a half section that is one quarter circle moves its head by all that
// the bend is moved by, so half of the free width on each side.
func TestBilgeSlack(t *testing.T) {
	s, err := hull.Solve(300, 300, hull.Shape{BilgeRadius: 300})
	if err != nil {
		t.Fatal(err)
	}
	if got := BilgeSlack(frame.Rib{Section: s}); math.Abs(got-FreeWidth/2) > 1e-6 {
		t.Errorf("quarter circle: %.6f mm, want %.1f", got, FreeWidth/2)
	}
	if got := BilgeSlack(frame.Rib{}); !math.IsInf(got, 1) {
		t.Errorf("a straight rib: %v", got)
	}
}

// TestBlocks: a middle ply in blocks has a mark for where each begins and ends, and the
// mortises stand where they would be cut.
func TestBlocks(t *testing.T) {
	_, cut := built(t, "brook")
	f := frametest.Shipped(t, "brook", func(d *design.Design) { d.Gunwale.Mortises = design.ByGap })
	all, err := Of(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	gap, was := Index(all), Index(cut)
	for i, m := range f.Gunwale.Mortises {
		middle := (gap[Name{fmt.Sprintf("block %d", i+1), "to", 0}].Value + gap[Name{fmt.Sprintf("block %d", i+2), "from", 0}].Value) / 2
		want := was[Name{"mortise " + m.Rib, "from midship", 0}].Value
		if math.Abs(middle-want) > 1e-9 || gap[Name{"mortise " + m.Rib, "from midship", 0}].Value != want {
			t.Errorf("the gap of rib %s lies at %.4f mm, cut it would at %.4f", m.Rib, middle, want)
		}
		b := gap[Name{fmt.Sprintf("block %d", i+1), "length", 0}]
		if b.Tolerance != 0.5 || !(b.Value > 0) {
			t.Errorf("block %d: %+v", i+1, b)
		}
	}
	if _, there := was[Name{"block 1", "from", 0}]; there {
		t.Error("cut mortises leave blocks")
	}
}
