package edition

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
)

// pairs is how many random pairs of designs a test tries.
func pairs(few int) int {
	if os.Getenv("RIBWRIGHT_LONG") != "" {
		return 200
	}
	return few
}

func worked(d *design.Design) (*Edition, error) {
	f, err := frame.Build(d)
	if err != nil {
		return nil, err
	}
	b, err := bend.Of(f)
	if err != nil {
		return nil, err
	}
	all, err := marks.Of(f, b)
	return &Edition{d, b, all}, err
}

func shipped(t testing.TB, name string, change func(*design.Design)) *Edition {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(d)
	}
	e, err := worked(d)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// changes are what a builder may change, by stratum: sizes, the row of ribs, what is
// aboard, the ends.
var changes = []func(r *rand.Rand, d *design.Design){
	func(r *rand.Rand, d *design.Design) { d.Hull.Beam += measure.Length(r.IntN(41) - 20) },
	func(r *rand.Rand, d *design.Design) { d.Hull.Depth += measure.Length(r.IntN(21) - 10) },
	func(r *rand.Rand, d *design.Design) { d.Hull.Length += measure.Length(r.IntN(101) - 50) },
	func(r *rand.Rand, d *design.Design) {
		d.Ribs.FromBow += measure.Length(r.IntN(60))
		d.Ribs.FromStern = d.Ribs.FromBow
	},
	func(r *rand.Rand, d *design.Design) { d.Ribs.Pitch += measure.Length(r.IntN(11)) },
	func(r *rand.Rand, d *design.Design) { d.Stringers.At = d.Stringers.At[:len(d.Stringers.At)-1] },
	func(r *rand.Rand, d *design.Design) { d.Stringers.At[0] += 0.01 * r.Float64() },
	func(r *rand.Rand, d *design.Design) { d.Seats, d.Crew = nil, nil },
	func(r *rand.Rand, d *design.Design) { d.Thwarts = nil },
	func(r *rand.Rand, d *design.Design) { d.Thwarts[0].At += measure.Length(d.Ribs.Pitch) },
	func(r *rand.Rand, d *design.Design) { d.Bow.Rake += measure.Angle(0.05 * r.Float64()) },
	func(r *rand.Rand, d *design.Design) { d.Hull.Sections[0].Flare += measure.Angle(0.03 * r.Float64()) },
	func(r *rand.Rand, d *design.Design) { d.Gunwale.Tilt += measure.Angle(0.01 * r.Float64()) },
	func(r *rand.Rand, d *design.Design) { d.Title += " II" },
	func(r *rand.Rand, d *design.Design) { d.Breasthook.Length += 5 },
}

// randomPairs makes pairs of editions that can be built, each of one to three changes.
func randomPairs(t testing.TB, n int, use func(old, new *Edition, about string)) {
	t.Helper()
	r := rand.New(rand.NewPCG(18, 1))
	for made := 0; made < n; {
		name := design.ShippedNames()[r.IntN(3)]
		old := shipped(t, name, nil)
		d := old.Design.Copy()
		about := name
		for range 1 + r.IntN(3) {
			i := r.IntN(len(changes))
			if len(d.Thwarts) == 0 && i == 9 {
				continue
			}
			changes[i](r, d)
			about += fmt.Sprintf(" %d", i)
		}
		if d.Check() != nil {
			continue
		}
		new, err := worked(d)
		if err != nil {
			continue
		}
		made++
		use(old, new, about)
	}
}

// TestEqual: an edition compared with itself has nothing that moved.
func TestEqual(t *testing.T) {
	for _, name := range design.ShippedNames() {
		a, b := shipped(t, name, nil), shipped(t, name, func(d *design.Design) { d.Edition, d.Changed = "2", "nothing" })
		c := Compare(a, b)
		if len(c.Changes)+len(c.Keys)+len(c.Shifted) != 0 || c.Same < len(a.Marks) {
			t.Errorf("%s: %d changes, %v, %v; %d of %d the same", name, len(c.Changes), c.Keys, c.Shifted, c.Same, len(a.Marks))
		}
		cut, err := ParseCut("stems,ribs,gunwales,breasthooks,thwarts,seats,keel,stringers,skin,keel-strip", a)
		if err != nil {
			t.Fatal(err)
		}
		for _, j := range c.Judge(cut) {
			if j.Verdict != Fits || len(j.Reasons) > 0 {
				t.Errorf("%s: %s %v %v", name, j.Name, j.Verdict, j.Reasons)
			}
		}
		if k, err := c.Keep(cut, worked); k != nil || err != nil {
			t.Errorf("%s: an edition is made to keep what fits (%v)", name, err)
		}
	}
}

// TestEveryMove lists all that moved, found here by going through both lists by
// themselves, and nothing else; backwards the signs turn.
func TestEveryMove(t *testing.T) {
	randomPairs(t, pairs(8), func(old, new *Edition, about string) {
		got := map[marks.Name]Change{}
		c := Compare(old, new)
		for _, d := range c.Changes {
			if _, twice := got[d.Name]; twice {
				t.Errorf("%s: %v stands twice", about, d.Name)
			}
			got[d.Name] = d
		}
		for _, m := range new.Marks {
			i := slices.IndexFunc(old.Marks, func(o marks.Mark) bool { return o.Name == m.Name })
			d, named := got[m.Name]
			moved := math.Inf(1)
			if i >= 0 {
				moved = math.Abs(m.Value - old.Marks[i].Value)
			}
			if m.Unit == marks.Radian {
				moved *= 0.1 / FloorAngle
			}
			if named != (moved > 0.1) {
				t.Errorf("%s: %v moved %.4f, named %v", about, m.Name, moved, named)
			}
			if named && i >= 0 && (d.New-d.Old != m.Value-old.Marks[i].Value || d.Matters() != (math.Abs(m.Value-old.Marks[i].Value) > min(m.Tolerance, old.Marks[i].Tolerance))) {
				t.Errorf("%s: %+v", about, d)
			}
		}
		back := Compare(new, old)
		if len(back.Changes) != len(c.Changes) || back.Same != c.Same {
			t.Errorf("%s: %d changes, %d backwards", about, len(c.Changes), len(back.Changes))
		}
		for _, d := range back.Changes {
			if f := got[d.Name]; !strings.HasPrefix(d.Quantity, Outline) && f.Moved() && (f.Old != d.New || f.New != d.Old) {
				t.Errorf("%s: %+v backwards is %+v", about, f, d)
			}
		}
	})
}

// TestRules: what every mark of the shipped boats is on the wood has been thought of.
func TestRules(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, gap := range []bool{false, true} {
			e := shipped(t, name, func(d *design.Design) {
				if gap {
					d.Gunwale.Mortises = design.ByGap
					d.Ribs.Thickness = d.Gunwale.Width/3 - d.Ribs.FitThickness
				}
			})
			for _, m := range e.Marks {
				known := slices.ContainsFunc(rules, func(r struct {
					part, quantity string
					rule
				}) bool {
					return r.part != "" && strings.HasPrefix(m.Part, r.part) && strings.HasPrefix(m.Quantity, r.quantity)
				})
				if !known && !strings.HasPrefix(m.Part, "hull") && !strings.HasPrefix(m.Part, "spreader") && m.Part != "rib peg" {
					t.Errorf("%s: no rule for %v", name, m.Name)
				}
			}
		}
	}
}

// TestFitsOnlyWithin moves each mark of a part alone: by little the part fits, by more
// than half of what it may be off it does not, and past that it never only wants a tape.
func TestFitsOnlyWithin(t *testing.T) {
	old := shipped(t, "river", nil)
	cut, err := ParseCut("stems,ribs:A2-F2,gunwales,breasthooks,thwarts,seats,keel,stringers,skin", old)
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range old.Marks {
		p := slices.IndexFunc(cut, func(c Cut) bool { return c.of(m.Name) })
		if p < 0 {
			continue
		}
		for _, share := range []float64{-0.8, 0.4, 1.2, -1.2, -0.4, 0.8}[:min(pairs(3), 6)] {
			new := &Edition{old.Design, old.Bend, slices.Clone(old.Marks)}
			new.Marks[i].Value += share * m.Tolerance
			v := Compare(old, new).Judge(cut[p : p+1])[0].Verdict
			floored := math.Abs(share*m.Tolerance) <= floor(m.Unit) // no change
			// Of its tolerance it is off by so much on wood: F1 is cut by the lane of M.
			share := (new.Marks[i].Value - drawnAs(old, m)) / m.Tolerance
			setUpOnly := ruleOf(m.Name) == setUp || ruleOf(m.Name) == scarf
			want := v == Fits || ruleOf(m.Name) == scarf
			switch {
			case floored:
			case math.Abs(share) > 1:
				want = v > Measure || setUpOnly && v >= Placed
			case math.Abs(share) > 0.5:
				want = v == Measure || setUpOnly && v <= Placed
			}
			if !want {
				t.Errorf("%v moved by %.1f of its tolerance: %v", m.Name, share, v)
			}
		}
	}
}

// TestFitsInTruth: of random pairs no piece is said to fit that is off by more than its
// tolerance. Ribs are held to their lengths and marks; the corners of stems to their
// distances from one another, which no move of a stem changes.
func TestFitsInTruth(t *testing.T) {
	fits := 0
	randomPairs(t, pairs(25), func(old, new *Edition, about string) {
		cut, err := ParseCut("stems,ribs,keel,stringers,gunwales", old)
		if err != nil {
			t.Fatal(err)
		}
		is := marks.Index(new.Marks)
		for _, j := range Compare(old, new).Judge(cut) {
			if j.Verdict > Placed {
				continue
			}
			fits++
			for _, m := range old.Marks {
				n, there := is[m.Name]
				if !j.of(m.Name) || strings.HasSuffix(j.Name, "stem") || j.Verdict == Placed && (ruleOf(m.Name) == setUp || ruleOf(m.Name) == scarf) {
					continue
				}
				if off := math.Abs(n.Value - drawnAs(old, m)); there && off > m.Tolerance {
					t.Errorf("%s: %s %v, and %v is %.2f off", about, j.Name, j.Verdict, m.Name, off)
				}
			}
			if strings.HasSuffix(j.Name, "stem") {
				if off := stemOff(j.Name, old, new); off > 2*sawnTo {
					t.Errorf("%s: %s %v, and its corners are %.2f mm off one another", about, j.Name, j.Verdict, off)
				}
			}
		}
	})
	if fits == 0 {
		t.Error("nothing fits; the pairs are too far apart")
	}
}

// drawnAs is what the sheets have for a mark of a rib: of ribs that share a lane the lines
// of the first.
func drawnAs(e *Edition, m marks.Mark) float64 {
	for _, g := range e.Bend.Frame.RibGroups {
		for _, name := range g.Names {
			if m.Part == "rib "+name && ruleOf(m.Name) != setUp {
				for _, o := range e.Marks {
					if o.Part == "rib "+g.Rib.Name && o.Quantity == m.Quantity && o.Number == m.Number {
						return o.Value
					}
				}
			}
		}
	}
	return m.Value
}

// TestSharedLane: a rib that was cut by the lane of another is as far off as that lane is.
func TestSharedLane(t *testing.T) {
	old := shipped(t, "river", func(d *design.Design) { d.Ribs.Tolerance = 1 })
	group := slices.IndexFunc(old.Bend.Frame.RibGroups, func(g frame.Group) bool { return len(g.Names) > 1 })
	if group < 0 {
		t.Fatal("no ribs share a lane")
	}
	g := old.Bend.Frame.RibGroups[group]
	of := func(rib string) int {
		return slices.IndexFunc(old.Marks, func(m marks.Mark) bool { return m.Part == "rib "+rib && m.Quantity == "length" })
	}
	first, other := of(g.Names[0]), of(g.Names[1])
	own := old.Marks[other].Value - old.Marks[first].Value
	new := &Edition{old.Design, old.Bend, slices.Clone(old.Marks)}
	new.Marks[other].Value += math.Copysign(0.45, own) // within half of what it may be off, by its own length
	cut, err := ParseCut("ribs:"+g.Names[1], old)
	if err != nil {
		t.Fatal(err)
	}
	j := Compare(old, new).Judge(cut)[0]
	if off := 0.45 + math.Abs(own); len(j.Reasons) != 1 || j.Verdict == Fits || math.Abs(math.Abs(j.Reasons[0].Off)-off) > 1e-9 {
		t.Errorf("rib %s, %.2f off the lane that it was cut by: %v %+v", g.Names[1], off, j.Verdict, j.Reasons)
	}
}

// stemOff is by how much distances between the shelf, the foot, the toe and the holes of
// a stem differ at most.
func stemOff(name string, old, new *Edition) float64 {
	points := func(e *Edition) []geometry.Point {
		s, l := e.Bend.Frame.Bow, e.Bend.Joints.Landings[1]
		if strings.HasPrefix(name, "stern") {
			s, l = e.Bend.Frame.Stern, e.Bend.Joints.Landings[0]
		}
		out := []geometry.Point{s.Shelf[0], s.Shelf[1]}
		for _, h := range l.Holes {
			out = append(out, h.At)
		}
		return out
	}
	a, b := points(old), points(new)
	worst := 0.0
	for i := range min(len(a), len(b)) {
		for j := range i {
			worst = math.Max(worst, math.Abs(a[i].Sub(a[j]).Norm()-b[i].Sub(b[j]).Norm()))
		}
	}
	return worst
}

// laidWithin is how much farther apart than the least an outline may be laid, mm: the
// smallest steps of easing it.
const laidWithin = 0.03

// TestLayOn: an outline that was only moved and turned is the same; one that is larger by
// a rim all round is off by the rim, on the outside one way and to spare the other.
func TestLayOn(t *testing.T) {
	e := shipped(t, "lake", nil)
	stem := e.Bend.Frame.Bow.Outline
	move := geometry.Turn(0.05).Then(geometry.Shift(30, -12))
	f := layOn(stem, stem.Map(move))
	if f.apart > 0.02 || math.Abs(f.turn-0.05) > 1e-5 {
		t.Errorf("moved: apart %.4f mm, turned by %.6f", f.apart, f.turn)
	}
	small, large := curve.Rectangle(geometry.Rect(0, 0, 200, 60)), curve.Rectangle(geometry.Rect(-1, -1, 201, 61))
	corner := math.Sqrt2
	if f := layOn(small, large); f.apart < corner-1e-6 || f.apart > corner+laidWithin || f.outside != f.apart || f.spare > 0.01 {
		t.Errorf("larger: %+v", f)
	}
	if f := layOn(large, small); f.spare < corner-1e-6 || f.spare > corner+laidWithin || f.outside > 0.01 {
		t.Errorf("smaller: %+v", f)
	}
}

// TestStemGoesAlong: in a longer boat with the same ends the stems are the same wood.
func TestStemGoesAlong(t *testing.T) {
	old := shipped(t, "brook", nil)
	new := shipped(t, "brook", func(d *design.Design) { d.Hull.Length += 30 })
	c := Compare(old, new)
	cut, _ := ParseCut("stems", old)
	for _, j := range c.Judge(cut) {
		if j.Verdict > Rework || j.Verdict < Placed {
			t.Errorf("%s: %v %+v", j.Name, j.Verdict, j.Reasons)
		}
	}
	if len(c.Shifted) != 2 || math.Abs(c.Shifted[0].Along-15) > 1 {
		t.Errorf("stems go %+v, want some 15 mm outward", c.Shifted)
	}
	along := 0
	for _, d := range c.Changes {
		if off, ok := c.onStem(d); ok && strings.HasSuffix(d.Quantity, " from midship") && math.Abs(d.By()) > 13 {
			along++
			if math.Abs(off) > 2 {
				t.Errorf("%s, %s moves by %.1f mm in the boat and %.1f mm on the wood", d.Part, d.Label(), d.By(), off)
			}
		}
	}
	if along < 4 {
		t.Errorf("%d places of the stems go along", along)
	}
}

// TestBoltsMove: gunwales that are bored for a cross piece do not fit an edition that has
// it elsewhere, though no mortise moved.
func TestBoltsMove(t *testing.T) {
	old := shipped(t, "brook", nil)
	new := shipped(t, "brook", func(d *design.Design) { d.Thwarts[0].At += measure.Length(d.Ribs.Pitch) })
	cut, err := ParseCut("gunwales", old)
	if err != nil {
		t.Fatal(err)
	}
	j := Compare(old, new).Judge(cut)[0]
	if j.Verdict != Rework || !strings.HasPrefix(j.Reasons[0].Quantity, "bolt of thwart 1") || math.Abs(j.Reasons[0].Off-float64(old.Design.Ribs.Pitch)) > 1 || !strings.Contains(j.Reasons[0].Do, "forward") {
		t.Errorf("%v: %+v", j.Verdict, j.Reasons)
	}
}

// TestFloorMoves: a floor that lies elsewhere is lashed elsewhere; one that became shorter is
// cut off and one that became longer made again, by as much, whichever end moved.
func TestFloorMoves(t *testing.T) {
	old := shipped(t, "brook", nil)
	cut, err := ParseCut("floors:1", old)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range []struct {
		aft, fore float64
		want      Verdict
		longer    float64
	}{{130, 130, Placed, 0}, {-60, -60, Placed, 0}, {0, -30, Rework, -30}, {30, 0, Rework, -30}, {-30, 0, Again, 30}, {100, 130, Again, 30}} {
		new := *old
		new.Marks = slices.Clone(old.Marks)
		for i, k := range new.Marks {
			switch k.Name {
			case marks.Name{Part: "floor 1", Quantity: "aft end"}:
				new.Marks[i].Value += m.aft
			case marks.Name{Part: "floor 1", Quantity: "fore end"}:
				new.Marks[i].Value += m.fore
			}
		}
		j := Compare(old, &new).Judge(cut)[0]
		if j.Verdict != m.want || len(j.Reasons) == 0 || math.Abs(j.Reasons[0].Off-m.longer) > 1e-9 {
			t.Errorf("ends moved by %g and %g: %v %+v", m.aft, m.fore, j.Verdict, j.Reasons)
		}
	}
}

// TestParseCut reads which parts are cut.
func TestParseCut(t *testing.T) {
	e := shipped(t, "brook", nil)
	for _, c := range []struct{ text, want string }{
		{"gunwales", "gunwales"}, {"stem:bow", "bow stem"}, {"ribs:A2-M", "rib A2 rib A1 rib M"}, {"ribs: f1 ", "rib F1"}, {"stringers:2-3,keel", "stringer 2 stringer 3 keel"},
		{"Thwarts", "thwart 1"}, {"keel-strip", "keel-strip"},
	} {
		cut, err := ParseCut(c.text, e)
		var got []string
		for _, p := range cut {
			got = append(got, p.Name)
		}
		if err != nil || strings.Join(got, " ") != c.want {
			t.Errorf("%q: %v, %v; want %s", c.text, got, err, c.want)
		}
	}
	for _, c := range []struct{ text, want string }{
		{"", "gunwales"}, {"masts", "ribs:A11-F11"}, {"ribs:A40", "A11 to F11"}, {"outwales", "no outwales"}, {"gunwales:1", "counts as one"}, {"ribs:A1,ribs:A1-A2", "twice"}, {"rib peg", "no part"},
	} {
		if _, err := ParseCut(c.text, e); err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v, want %q", c.text, err, c.want)
		}
	}
}

// TestKeep: the edition that is made for what is cut fits all of it, takes what has
// nothing to do with it whole, and no key of it can be taken a step further.
func TestKeep(t *testing.T) {
	old := shipped(t, "brook", nil)
	new := shipped(t, "brook", func(d *design.Design) {
		d.Hull.Beam += 20
		d.Stringers.At[1] += 0.004
		d.Keel.Depth += 1
	})
	c := Compare(old, new)
	cut, err := ParseCut("gunwales", old)
	if err != nil {
		t.Fatal(err)
	}
	k, err := c.Keep(cut, worked)
	if err != nil || k == nil {
		t.Fatal(k, err)
	}
	for _, j := range Compare(old, k.Edition).Judge(cut) {
		if j.Verdict > Placed {
			t.Errorf("%s: %v %v", j.Name, j.Verdict, j.Reasons)
		}
	}
	beam := k.Design.Hull.Beam
	if !(beam > 720 && beam < 740) || k.Design.Keel.Depth != new.Design.Keel.Depth || k.Design.Stringers.At[1] != new.Design.Stringers.At[1] {
		t.Errorf("beam %v, keel %v, stringers %v", beam, k.Design.Keel.Depth, k.Design.Stringers.At)
	}
	if k.Design.Edition != "2" || !strings.Contains(k.Design.Changed, "gunwales") {
		t.Errorf("edition %q: %q", k.Design.Edition, k.Design.Changed)
	}
	further := k.Design.Copy()
	further.Hull.Beam++
	e, err := worked(further)
	if err != nil {
		t.Fatal(err)
	}
	if j := Compare(old, e).Judge(cut)[0]; j.Verdict <= Placed {
		t.Errorf("a beam of %v would fit too", further.Hull.Beam)
	}
}

// TestKeepTied: two keys that cannot be built without one another go together.
func TestKeepTied(t *testing.T) {
	old := shipped(t, "brook", nil)
	new := shipped(t, "brook", func(d *design.Design) {
		d.Ribs.FromBow += 110
		d.Ribs.FromStern += 110
		d.Hull.Beam += 10
	})
	c := Compare(old, new)
	cut, err := ParseCut("ribs:M", old)
	if err != nil {
		t.Fatal(err)
	}
	k, err := c.Keep(cut, worked)
	if err != nil || k == nil {
		t.Fatal(k, err)
	}
	if r := k.Design.Ribs; r.FromBow != r.FromStern || r.FromBow <= 330 {
		t.Errorf("from bow %v, from stern %v", r.FromBow, r.FromStern)
	}
}

// TestElsewhere: where ribs change places, a rib that is cut does for another.
func TestElsewhere(t *testing.T) {
	old := shipped(t, "lake", nil)
	new := &Edition{old.Design, old.Bend, slices.Clone(old.Marks)}
	for i, m := range new.Marks {
		switch m.Part {
		case "rib F5":
			new.Marks[i].Part = "rib F6"
		case "rib F6":
			new.Marks[i].Part = "rib F5"
		}
	}
	cut, _ := ParseCut("ribs:F5", old)
	j := Compare(old, new).Judge(cut)[0]
	if j.Verdict == Fits || j.Verdict == Again && j.Instead != "rib F6" && j.Instead != "rib A6" {
		t.Errorf("%v, instead %q", j.Verdict, j.Instead)
	}
}

func BenchmarkCompare(b *testing.B) {
	old := shipped(b, "lake", nil)
	new := shipped(b, "lake", func(d *design.Design) { d.Hull.Beam += 15 })
	for b.Loop() {
		Compare(old, new)
	}
}
