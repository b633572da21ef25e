package hours

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/shop/shoptest"
)

// counted returns the counts of operations by their names.
func counted(all []Work) map[string]float64 {
	out := map[string]float64{}
	for _, w := range all {
		out[w.Name] += w.Count
	}
	return out
}

// TestOncePerPiece: what is done to a piece is counted once for each such piece of
// the frame.
func TestOncePerPiece(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f, p, all := work(t, name)
		_, n := shoptest.Needs(t, f)
		ribs, plies := float64(len(f.Ribs)), float64(f.Design.Gunwale.Plies)
		battens := 0.0 // keel and stringers, port and starboard
		for _, s := range p.Sticks {
			if s.Family == cutlist.Keel || s.Family == cutlist.Stringer {
				battens++
			}
		}
		got := counted(all)
		for op, want := range map[string]float64{
			"mark, trim and ease ribs":         ribs,
			"steam and bend":                   ribs,
			"fit, true by eye and peg":         ribs,
			"mark and cut mortises":            2 * ribs, // one in each gunwale
			"glue plies of a pair of gunwales": 2 * (plies - 1),
			"cut the ends":                     4,
			"make and fit breasthooks":         2,
			"fit keel and stringers":           battens,
			"coat":                             n.Cloth.Area / 1e6 * float64(f.Design.Skin.Coats),
			"mix, clean up":                    float64(f.Design.Skin.Coats),
			"oil":                              n.WoodFaces / 1e6 * materials.OilCoats,
			"gather and sew the ends":          2,
			"fasten the cloth":                 2 * (f.Gunwale.Fore - f.Gunwale.Aft) / 1000,
		} {
			if math.Abs(got[op]-want) > 1e-9 {
				t.Errorf("%s: %s: %g, want %g", name, op, got[op], want)
			}
		}
	}
}

// TestMinutesMakeHours: 30 times two minutes are an hour for who is experienced, and
// as much more for others as their factor says.
func TestMinutesMakeHours(t *testing.T) {
	w := Work{Stage: Lash, Count: 30, Minutes: 2}
	for _, s := range Skills() {
		if got := w.Hours(s); math.Abs(got-s.Factor()) > 1e-12 {
			t.Errorf("%v: %g h, want %g", s, got, s.Factor())
		}
	}
	if w.Hours(Experienced) != 1 {
		t.Errorf("an hour takes %g h", w.Hours(Experienced))
	}
}

// TestSaw counts a board by hand: 2 m with a rip in two layers and one in one layer
// are 6 m of ripping; four pieces are cut to length; sticks of two sections want the
// saw set twice.
func TestSaw(t *testing.T) {
	piece := func(stick int) cutlist.Piece { return cutlist.Piece{Stick: stick, Number: 1, Of: 1, Length: 900} }
	stick := cutlist.Stick{Length: 900, Width: 30, Thickness: 10}
	other := cutlist.Stick{Length: 900, Width: 30, Thickness: 12}
	p := &cutlist.Plan{
		Sticks:   []cutlist.Stick{stick, stick, stick, other},
		Cuttings: make([]cutlist.Cutting, 4),
		Woods: []cutlist.Wood{{Boards: []cutlist.Sawn{{Board: cutlist.Board{Length: 2000}, Rips: []cutlist.RipCut{
			{Layers: [][]cutlist.Piece{{piece(0), piece(1)}, {piece(2)}}}, {Layers: [][]cutlist.Piece{{piece(3)}}}}}}}},
	}
	c := counter{p: p}
	c.wood()
	got := counted(c.out)
	for op, want := range map[string]float64{"rip": 6, "crosscut and mark": 4, "set the saw for a section": 2, "plane and ease the edges": 3.6, "scarf and glue": 0} {
		if math.Abs(got[op]-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", op, got[op], want)
		}
	}
}

// TestSharesOfSawing: of a board with 900 mm of the frame's 30 x 10 and as much of a fitting's each
// is crosscut and planed for itself, and the saw that is set already is not set again.
func TestSharesOfSawing(t *testing.T) {
	piece := func(stick int) cutlist.Piece { return cutlist.Piece{Stick: stick, Number: 1, Of: 1, Length: 900} }
	stick := cutlist.Stick{Length: 900, Width: 30, Thickness: 10}
	own := stick
	own.Kit, own.Own = "trial", true
	p := &cutlist.Plan{Sticks: []cutlist.Stick{stick, own}, Cuttings: make([]cutlist.Cutting, 2),
		Woods: []cutlist.Wood{{Boards: []cutlist.Sawn{{Board: cutlist.Board{Length: 2000}, Rips: []cutlist.RipCut{{Layers: [][]cutlist.Piece{{piece(0)}, {piece(1)}}}}}}}}}
	c := counter{p: p}
	c.wood()
	for _, w := range c.out {
		want := map[string]float64{"crosscut and mark": 1, "plane and ease the edges": 0.9}[w.Name]
		if math.Abs(w.Own-want) > 1e-9 || w.Outfits != 0 {
			t.Errorf("%s: fittings have %g of %g, want %g", w.Name, w.Own, w.Count, want)
		}
	}
}

// TestOutfitByHand counts an outfit of three boards and two spars of 2 m.
func TestOutfitByHand(t *testing.T) {
	k := kit.Kit{Name: "trial", Sewing: 12, Corners: 4, Pieces: []kit.Piece{
		{Count: 3, Form: kit.Board, Long: 500}, {Count: 2, Form: kit.Spar, Long: 2000}, {Count: 1, Form: kit.Beam, Long: 2600}}}
	c := counter{p: &cutlist.Plan{}}
	c.fitted(k)
	got := counted(c.out)
	for op, want := range map[string]float64{"trial: shape and drill boards": 3, "trial: plane spars round": 4,
		"trial: plane beams, round their edges": 2.6, "trial: sew hems and seams": 12, "trial: patch and eyelet corners": 4} {
		if math.Abs(got[op]-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", op, got[op], want)
		}
	}
}

// TestGlueLines: three layers of one piece are glued twice, a piece in one layer not
// at all; the boat's own plies are counted with its gunwales.
func TestGlueLines(t *testing.T) {
	layer := func(member string) cutlist.Stick {
		return cutlist.Stick{Family: cutlist.Fitting, Member: member, Kit: "trial"}
	}
	c := counter{p: &cutlist.Plan{Sticks: []cutlist.Stick{layer("step"), layer("step"), layer("step"), layer("cheek"), layer("cheek"), layer(""),
		{Family: cutlist.Gunwale, Member: "port gunwale"}, {Family: cutlist.Gunwale, Member: "port gunwale"}}}}
	c.fitted(kit.Kit{Name: "trial", Own: true, Works: []kit.Work{{Name: "bore", Count: 2, Bare: true}}})
	for _, w := range c.out {
		if bore := w.Name == "trial: bore"; (w.Stage == Oil) != bore || (w.Stage == Fit) == bore || w.Own != w.Count {
			t.Errorf("%+v", w)
		}
	}
	if got := counted(c.out)["trial: glue layers and staves"]; got != 3 {
		t.Errorf("%g glue lines, want 3", got)
	}
}

// TestMorePlies: a gunwale of one more ply takes one glue line more on each side, and
// nothing else about the frame's own work changes.
func TestMorePlies(t *testing.T) {
	frameWork := func(plies int) map[string]float64 {
		f := frametest.Shipped(t, "brook", func(d *design.Design) { d.Gunwale.Plies = plies })
		c := counter{f: f, n: &materials.Needs{Joints: &joint.Joints{}}}
		c.frame()
		return counted(c.out)
	}
	three, four := frameWork(3), frameWork(4)
	for op, n := range four {
		more := 0.0
		if op == "glue plies of a pair of gunwales" {
			more = 2
		}
		if n-three[op] != more {
			t.Errorf("%s: %g with four plies, %g with three", op, n, three[op])
		}
	}
}

// TestMethods: on forms each plate is sawn and each rib clamped, which takes longer than
// by hand; in place nothing is said of forms. The rest of the work is the same.
func TestMethods(t *testing.T) {
	ribs := func(method design.Method, needs *materials.Needs) (all []Work, count map[string]float64, hours float64) {
		f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Bending.Method = method })
		c := counter{f: f, n: needs}
		c.frame()
		return c.out, counted(c.out), Hours(c.out, Bend, Experienced)
	}
	hand, byHand, handHours := ribs(design.InPlace, &materials.Needs{Joints: &joint.Joints{}})
	_, onForms, formHours := ribs(design.OnForms, &materials.Needs{Joints: &joint.Joints{}, Forms: materials.Forms{Count: 14, Plates: 28, Sheets: 3}})
	for _, w := range hand {
		if strings.Contains(w.Name, "form") {
			t.Errorf("in place: %+v", w)
		}
	}
	if onForms["saw, drill and fair forms"] != 28 || onForms["clamp on the form, tie and take off"] != 27 || onForms["tie and sight the bilge battens"] != 0 || byHand["tie and sight the bilge battens"] != 2 {
		t.Errorf("on forms %v, by hand %v", onForms, byHand)
	}
	// 28 plates of 20 minutes and 27 ribs of 4 more, 2 battens of 12 less.
	if more := formHours - handHours; math.Abs(more-(28*20+27*4-2*12)/60.0) > 1e-9 {
		t.Errorf("forms take %.2f h more", more)
	}
}
