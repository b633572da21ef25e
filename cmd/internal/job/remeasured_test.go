package job

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/edition"
	"ribwright/geometry/marks"
	"ribwright/render/rendertest"
)

// onNoPaper says why a mark cannot be measured; "" where it must be.
func onNoPaper(n marks.Name) string {
	switch {
	case n.Part == "gunwale" && n.Quantity == "form radius":
		return "only gunwales that are glued on a form have one; others are bent round their spreaders"
	case strings.HasPrefix(n.Part, "seat ") && (n.Quantity == "top" || strings.HasSuffix(n.Quantity, "rail top")):
		return "builders get heights over the floor, and the rails' by their hangers"
	case strings.HasPrefix(n.Quantity, "no scarf "):
		return "bars have no numbers on the strip; checkBars holds them to it all together"
	}
	return ""
}

// onPaper measures a shipped boat, once for all tests.
func onPaper(t *testing.T, k *facts) *boatDrawn {
	return shared(t, "measured "+k.name, func() (*boatDrawn, error) {
		_, s := laidOver(t, k, k)
		return measureAll(t, printed(t, s.Now().Document), readBook(t, k.design)), nil
	})
}

// TestOnPaper: every mark of the shipped boats stands on their sheets or in their books, and
// what stands there is a mark.
func TestOnPaper(t *testing.T) {
	for _, name := range design.ShippedNames() {
		t.Run(name, func(t *testing.T) {
			k, err := World{}.factsOf(name)
			if err != nil {
				t.Fatal(err)
			}
			e, err := k.edition()
			if err != nil {
				t.Fatal(err)
			}
			onPaper(t, k).checkList(t, e)
		})
	}
}

// TestCompareAgainstSheets measures every mark of both editions out of their finished
// sheets and books. What moved on paper by more than 0.1 mm is named, and by how much; what
// is named is on paper at both its places; a mark that nobody can measure, and a line that
// nobody reads, are faults of this test. What is lettered to a tenth or a whole millimeter
// is held to as much.
func TestCompareAgainstSheets(t *testing.T) {
	drawnMarks := 0
	eachPair(t, pairsTried(3), 4, func(t *testing.T, old, new *facts) {
		k, s := laidOver(t, old, new)
		was := onPaper(t, old)
		is := measureAll(t, printed(t, s.Now().Document), readBook(t, new.design))
		is.checkList(t, k.New)
		p := paired{t, k, was, is, map[marks.Name]edition.Change{}}
		for _, c := range k.Changes {
			p.named[c.Name] = c
		}
		drawnMarks += p.checkMarks()
		p.checkHeads()
		p.checkBars()
		p.checkShapes()
	})
	if drawnMarks < 1000 {
		t.Errorf("only %d marks are drawn in both editions of a pair", drawnMarks)
	}
}

// checkList holds the list of an edition's marks to its paper, both ways.
func (m *boatDrawn) checkList(t *testing.T, e *edition.Edition) {
	t.Helper()
	listed := marks.Index(e.Marks)
	for name, mark := range listed {
		r, is := m.of[name]
		switch {
		case !is && onNoPaper(name) == "":
			t.Errorf("nobody measures %v", name)
		case is && math.Abs(r.value-mark.Value) > r.within:
			t.Errorf("%v is %.4f, and is %s as %.4f, which is within %.4f", name, mark.Value, r.where, r.value, r.within)
		}
	}
	for name, r := range m.of {
		if _, is := listed[name]; !is && r.value != 0 { // a head that is not eased
			t.Errorf("%v is %s as %.4f and is no mark", name, r.where, r.value)
		}
	}
	for rib, head := range m.heads {
		of := func(quantity string) float64 { return listed[marks.Name{Part: "rib " + rib, Quantity: quantity}].Value }
		if off := head - of("depth") - of("keel height"); math.Abs(off) > drawnWithin {
			t.Errorf("the head of rib %s is drawn %.3f mm too high", rib, off)
		}
	}
}

// paired are two editions, what is named between them and what their papers have.
type paired struct {
	t *testing.T
	*edition.Comparison
	was, is *boatDrawn
	named   map[marks.Name]edition.Change
}

// checkMarks goes through all that was measured. It returns how many marks are drawn.
func (p *paired) checkMarks() (drawn int) {
	listed := marks.Index(p.New.Marks)
	for name, b := range p.is.of {
		a, both := p.was.of[name]
		c, named := p.named[name]
		if !both {
			if !named && b.value != 0 {
				p.t.Errorf("%v is new on paper, and not named", name)
			}
			continue
		}
		floor := edition.FloorLength
		if listed[name].Unit == marks.Radian {
			floor = edition.FloorAngle
		}
		if a.where == "drawn" && b.where == "drawn" {
			drawn++
		}
		moved, within := math.Abs(b.value-a.value), a.within+b.within
		switch {
		case !named && moved > floor+within:
			p.t.Errorf("%v is %s as %.4f and then as %.4f, and not named", name, b.where, a.value, b.value)
		case named && c.Moved() && moved < floor-within:
			p.t.Errorf("%v is %s as %.4f and then as %.4f, and named", name, b.where, a.value, b.value)
		case named && c.Moved() && (math.Abs(c.Old-a.value) > a.within || math.Abs(c.New-b.value) > b.within):
			p.t.Errorf("%v moved from %.4f to %.4f, and is %s as %.4f and %.4f", name, c.Old, c.New, b.where, a.value, b.value)
		}
	}
	for name, a := range p.was.of {
		if _, still := p.is.of[name]; !still && a.value != 0 {
			if c, named := p.named[name]; !named || !math.IsNaN(c.New) {
				p.t.Errorf("%v is gone from paper, and not named", name)
			}
		}
	}
	return drawn
}

// checkHeads: a head that moved up or down on the body plan is named by its rib's depth or
// by its keel's height.
func (p *paired) checkHeads() {
	for rib, b := range p.is.heads {
		a, both := p.was.heads[rib]
		by := func(quantity string) float64 { return p.named[marks.Name{Part: "rib " + rib, Quantity: quantity}].By() }
		told := 0.0
		for _, quantity := range []string{"depth", "keel height"} {
			if by := by(quantity); !math.IsNaN(by) {
				told += by
			}
		}
		if both && math.Abs(b-a-told) > 2*edition.FloorLength+2*drawnWithin {
			p.t.Errorf("the head of rib %s is drawn %.3f mm higher, and %.3f mm are named", rib, b-a, told)
		}
	}
}

// checkBars: where a bar begins or ends that no bar of the other edition begins or ends
// at, something is named, and what is named lies at an end of a bar or under one.
func (p *paired) checkBars() {
	side := func(bars, others []rendertest.Box, value func(edition.Change) float64) {
		for _, b := range bars {
			for _, x := range []float64{b.X0, b.X1} {
				near := func(v float64) bool { return math.Abs(math.Abs(v)-math.Abs(x)) < edition.FloorLength+drawnWithin }
				found := math.Abs(x+20) < drawnWithin // where a half is cut off past midship
				for _, o := range others {
					found = found || near(o.X0) || near(o.X1)
				}
				for _, c := range p.named {
					found = found || strings.HasPrefix(c.Quantity, "no scarf") && near(value(c))
				}
				if !found {
					p.t.Errorf("a bar has an end at %.3f that the other edition has not, and nothing is named", x)
				}
			}
		}
	}
	side(p.was.bars, p.is.bars, func(c edition.Change) float64 { return c.Old })
	side(p.is.bars, p.was.bars, func(c edition.Change) float64 { return c.New })
	for _, c := range p.named {
		if !strings.HasPrefix(c.Quantity, "no scarf") {
			continue
		}
		if !math.IsNaN(c.Old) && !barred(p.was.bars, c.Old) || !math.IsNaN(c.New) && !barred(p.is.bars, c.New) {
			p.t.Errorf("%s moved from %.3f to %.3f, and no bar does", c.Label(), c.Old, c.New)
		}
	}
}

// barred reports whether a bar lies at a place of the gunwale, or at its mirror's.
func barred(bars []rendertest.Box, x float64) bool {
	for _, b := range bars {
		if x > b.X0-drawnWithin && x < b.X1+drawnWithin || -x > b.X0-drawnWithin && -x < b.X1+drawnWithin {
			return true
		}
	}
	return false
}

// checkShapes lays the drawn outlines on one another: those that are apart are named, with
// how far.
func (p *paired) checkShapes() {
	const (
		search = 0.05 // mm that either way of laying may miss the least by
		far    = 3.0  // mm; compare looks no longer for the least of what is farther apart
	)
	for key, b := range p.is.shapes {
		part, quantity, _ := strings.Cut(key, "|")
		a, both := p.was.shapes[key]
		if !both {
			continue // its marks say that it is new
		}
		c, named := p.named[marks.Name{Part: part, Quantity: quantity}]
		apart := apartDrawn(a, b)
		what := fmt.Sprintf("%s, %s: drawn %.3f mm apart", part, quantity, apart)
		switch {
		case !named && apart > edition.FloorLength+search:
			p.t.Errorf("%s, and not named", what)
		case named && apart < edition.FloorLength-search:
			p.t.Errorf("%s, and named with %.3f", what, c.New)
		case named && c.New > far:
			if apart < far/2 {
				p.t.Errorf("%s, and named as other parts with %.3f", what, c.New)
			}
		case named && math.Abs(c.New-apart) > search+0.05*apart:
			p.t.Errorf("%s, named with %.3f", what, c.New)
		}
	}
}
