package job

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/edition"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/tile"
	"ribwright/render/pdf"
	"ribwright/render/rendertest"
)

// edits are what a builder may change from one edition to the next, by stratum.
var edits = []struct {
	about  string
	change func(r *rand.Rand, d *design.Design)
}{
	{"beam", func(r *rand.Rand, d *design.Design) { d.Hull.Beam += measure.Length(1 + r.IntN(20)) }},
	{"depth", func(r *rand.Rand, d *design.Design) { d.Hull.Depth += measure.Length(r.IntN(21) - 10) }},
	{"length", func(r *rand.Rand, d *design.Design) { d.Hull.Length += measure.Length(r.IntN(101) - 50) }},
	{"fewer ribs", func(r *rand.Rand, d *design.Design) { d.Ribs.FromBow += d.Ribs.Pitch; d.Ribs.FromStern += d.Ribs.Pitch }},
	{"pitch", func(r *rand.Rand, d *design.Design) { d.Ribs.Pitch += measure.Length(1 + r.IntN(10)) }},
	{"fewer stringers", func(r *rand.Rand, d *design.Design) { d.Stringers.At = d.Stringers.At[:len(d.Stringers.At)-1] }},
	{"a stringer", func(r *rand.Rand, d *design.Design) { d.Stringers.At[0] += 0.01 * r.Float64() }},
	{"no seats", func(r *rand.Rand, d *design.Design) { d.Seats, d.Crew = nil, nil }},
	{"no thwarts", func(r *rand.Rand, d *design.Design) { d.Thwarts = nil }},
	{"rake", func(r *rand.Rand, d *design.Design) { d.Bow.Rake += measure.Angle(0.05 * r.Float64()) }},
	{"breasthook", func(r *rand.Rand, d *design.Design) { d.Breasthook.Length += 5 }},
	{"name", func(r *rand.Rand, d *design.Design) { d.Title += " II" }},
	{"edition", func(r *rand.Rand, d *design.Design) { d.Edition = "2" }},
}

// eachPair makes pairs of editions that can be built, of one to so many changes.
func eachPair(t *testing.T, n, changes int, use func(t *testing.T, old, new *facts)) {
	t.Helper()
	r := rand.New(rand.NewPCG(18, 2))
	for made := 0; made < n; {
		name := design.ShippedNames()[r.IntN(3)]
		old, err := World{}.factsOf(name)
		if err != nil {
			t.Fatal(err)
		}
		d, about := old.design.Copy(), name
		for range 1 + r.IntN(changes) {
			e := edits[r.IntN(len(edits))]
			e.change(r, d)
			about += ", " + e.about
		}
		if d.Check() != nil {
			continue
		}
		new, err := newFacts(d, "new")
		if err != nil {
			t.Fatal(err)
		}
		if _, err := new.marks(); err != nil {
			continue
		}
		made++
		t.Run(about, func(t *testing.T) { use(t, old, new) })
	}
}

func pairsTried(few int) int {
	if long {
		return 200
	}
	return few
}

// drawn is a set of sheets as its PDF has it.
type drawn struct {
	layout.Document
	pages []rendertest.Page
}

func printed(t *testing.T, doc layout.Document) drawn {
	t.Helper()
	var b bytes.Buffer
	err := pdf.Encode(&b, doc, world().Made)
	out := drawn{Document: doc}
	if err == nil {
		var file *rendertest.PDF
		if file, err = rendertest.ReadPDF(b.Bytes()); err == nil {
			out.pages, err = file.Pages()
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// views are the pieces of a pattern with their pages.
func (d drawn) views(pattern string) map[rendertest.View]rendertest.Page {
	out := map[rendertest.View]rendertest.Page{}
	for i, s := range d.Sheets {
		for _, v := range s.Views {
			if v.Drawing.Name == pattern {
				m, f := v.ToSheet, v.Frame
				out[rendertest.View{Page: i + 1, Pattern: pattern, Tile: v.Tile, Edges: [4]float64{f.Min.X, f.Min.Y, f.Max.X, f.Max.Y}, ToSheet: [6]float64{m.A, m.B, m.C, m.D, m.E, m.F}}] = d.pages[i]
			}
		}
	}
	return out
}

// laidOver compares two editions and lays the sheets of the one over the other's.
func laidOver(t *testing.T, old, new *facts) (*edition.Comparison, *tile.Since) {
	t.Helper()
	a, err := old.edition()
	if err != nil {
		t.Fatal(err)
	}
	b, err := new.edition()
	if err != nil {
		t.Fatal(err)
	}
	c := NewCompare()
	s, err := c.sheets(&compared{old: old, new: new, was: a, is: b}, World{})
	if err != nil {
		t.Fatal(err)
	}
	return edition.Compare(a, b), s
}

// TestKeptSheets draws both sets: a sheet that is kept has the same ink in both but for its
// title block, and every piece of the new set lies on one sheet of it.
func TestKeptSheets(t *testing.T) {
	kept := 0
	eachPair(t, pairsTried(3), 2, func(t *testing.T, old, new *facts) {
		_, s := laidOver(t, old, new)
		was, is := printed(t, s.Was().Document), printed(t, s.Now().Document)
		for _, n := range s.Kept {
			kept++
			a, b := inkOf(was.pages[n-1]), inkOf(is.pages[n-1])
			if off := a.missing(b) + b.missing(a); off > 0 {
				t.Errorf("sheet %d is kept, and %d spots of it differ", n, off)
			}
			if !slices.EqualFunc(a.words, b.words, func(x, y rendertest.Text) bool { return x.Words == y.Words && x.At.To(y.At) < 0.02 }) {
				t.Errorf("sheet %d is kept, and its words differ: %v, %v", n, a.words, b.words)
			}
		}
		on := map[string]int{}
		for _, sheet := range s.Now().Sheets {
			for _, v := range sheet.Views {
				on[v.Drawing.Name+" "+v.Tile]++
			}
		}
		for _, p := range s.Pieces {
			if on[p.Pattern+" "+p.Tile] != 1 {
				t.Errorf("%s %s lies on %d sheets", p.Pattern, p.Tile, on[p.Pattern+" "+p.Tile])
			}
		}
		if len(s.Pieces) != len(on) {
			t.Errorf("%d pieces, %d views", len(s.Pieces), len(on))
		}
		noOverlap(t, s.Now().Document)
	})
	if kept == 0 {
		t.Error("no sheet was kept; the pairs are too far apart")
	}
}

// noOverlap keeps the pieces of a sheet off each other.
func noOverlap(t *testing.T, d layout.Document) {
	t.Helper()
	for _, s := range d.Sheets {
		var all []rendertest.Box
		for _, v := range s.Views {
			on := v.OnSheet()
			b := rendertest.Box{X0: on.Min.X, Y0: on.Min.Y, X1: on.Max.X, Y1: on.Max.Y}
			for _, o := range all {
				if !o.Meet(b).Empty() {
					t.Errorf("sheet %d: pieces lie on each other", s.Number)
				}
			}
			all = append(all, b)
		}
	}
}

// sheetInk is what is seen on a page over its title block: spots by pen and place, and
// words with theirs.
type sheetInk struct {
	spots map[inkSpot]bool
	words []rendertest.Text
}

// inkSpot is a square of paper with ink of a pen, whose width is in hundredths of a mm.
type inkSpot struct{ width, x, y int }

// spotWide is the size of the spots, mm.
const spotWide = 0.5

// inkOf goes along every line of a page within its clip.
func inkOf(p rendertest.Page) sheetInk {
	out := sheetInk{spots: map[inkSpot]bool{}}
	// mm, the lower margin and the title block, which may go on in the column on the right; how many
	// key maps stand over it there hangs on its words.
	const foot, column = 12.7 + 9.8, 12.7 + 7.3
	own := func(q rendertest.Point) bool { return q.Y > foot && q.X < p.W-column }
	for _, s := range p.Strokes {
		width := int(math.Round(100 * s.Width))
		for _, o := range s.Outlines {
			pts := o.Points(24)
			for i := 1; i < len(pts); i++ {
				a, b := pts[i-1], pts[i]
				n := math.Ceil(a.To(b)/(spotWide/2)) + 1
				for k := 0.0; k <= n; k++ {
					x, y := a.X+(b.X-a.X)*k/n, a.Y+(b.Y-a.Y)*k/n
					c := s.Clip.Grow(-0.3)
					if own(rendertest.Point{X: x, Y: y}) && x > c.X0 && x < c.X1 && y > c.Y0 && y < c.Y1 {
						out.spots[inkSpot{width, int(math.Floor(x / spotWide)), int(math.Floor(y / spotWide))}] = true
					}
				}
			}
		}
	}
	for _, x := range p.Texts {
		if own(x.At) && !x.Bounds().Meet(x.Clip).Empty() {
			out.words = append(out.words, x)
		}
	}
	return out
}

// missing counts the spots that another page has nowhere near.
func (k sheetInk) missing(o sheetInk) int {
	n := 0
	for s := range k.spots {
		found := false
		for d := range 9 {
			found = found || o.spots[inkSpot{s.width, s.x + d%3 - 1, s.y + d/3 - 1}]
		}
		if !found {
			n++
		}
	}
	return n
}

// inFiles gives a job two designs as files.
func inFiles(t *testing.T, designs map[string]*design.Design) World {
	t.Helper()
	files := map[string][]byte{}
	for name, d := range designs {
		var b bytes.Buffer
		if err := design.Encode(&b, d); err != nil {
			t.Fatal(err)
		}
		files[name] = b.Bytes()
	}
	w := world()
	w.Files = InMemory(files)
	return w
}

// TestCompareTold: the page and the numbers of a small change agree, and a set of the
// changed sheets holds these and no others.
func TestCompareTold(t *testing.T) {
	old, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	new := old.Copy()
	new.Thwarts[0].At += 125
	new.Next(old, "thwart a rib farther forward")
	w := inFiles(t, map[string]*design.Design{"old.toml": old, "new.toml": new})
	m := do(t, asked(t, "compare", "old.toml", "new.toml", "--cut", "thwarts,gunwales,ribs:A1-M"), w)
	var n struct {
		Old, New struct{ Edition, Fingerprint, Changed string }
		Changes  []struct {
			Part, Quantity string
			Old, New       *float64
			Matters        bool
		}
		Sheets struct{ Reprint, Serve, Keep []int }
		Cut    []struct{ Part, Verdict string }
		Keeps  *struct{ Takes, Leaves []struct{ Key string } }
	}
	if err := json.Unmarshal(m.Result.numbersJSON(t), &n); err != nil {
		t.Fatal(err)
	}
	if n.New.Edition != "2" || n.New.Changed == "" || n.Old.Fingerprint == n.New.Fingerprint {
		t.Errorf("%+v beside %+v", n.Old, n.New)
	}
	for _, c := range n.Changes {
		if !strings.HasPrefix(c.Part, "thwart") && c.Part != "gunwale" {
			t.Errorf("%s, %s is named", c.Part, c.Quantity)
		}
	}
	verdicts := map[string]string{}
	for _, j := range n.Cut {
		verdicts[j.Part] = j.Verdict
	}
	if verdicts["gunwales"] != "rework" || verdicts["rib A1"] != "fits" || verdicts["rib M"] != "fits" || verdicts["thwart 1"] == "fits" {
		t.Errorf("verdicts %v", verdicts)
	}
	if n.Keeps == nil || len(n.Keeps.Takes)+len(n.Keeps.Leaves) != 1 || m.files["brook-edition-3-kept.toml"] == nil {
		t.Errorf("kept: %+v", n.Keeps)
	}
	if all := len(n.Sheets.Keep) + len(n.Sheets.Reprint); all < 12 || 3*len(n.Sheets.Keep) < 2*all {
		t.Errorf("sheets %+v", n.Sheets)
	}
	if !strings.Contains(m.said, "thwart a rib farther forward") || !strings.Contains(m.said, "compared with edition 1, edition 2") {
		t.Errorf("told:\n%s", m.said)
	}
	l := do(t, asked(t, "loft", "new.toml", "--since", "old.toml", "--nest", "quick"), w)
	s := l.read(t, "brook-edition-2")
	if len(s.pages) != len(n.Sheets.Reprint)+len(n.Sheets.Serve) {
		t.Errorf("%d sheets printed, want %d that must and %d that may be", len(s.pages), len(n.Sheets.Reprint), len(n.Sheets.Serve))
	}
	for i, p := range s.pages {
		if !slices.ContainsFunc(p.Texts, func(x rendertest.Text) bool { return strings.Contains(x.Words, "edition 2, design "+n.New.Fingerprint) }) {
			t.Errorf("page %d does not show its edition", i+1)
		}
	}
}

func (r *Result) numbersJSON(t *testing.T) []byte {
	t.Helper()
	b, err := json.Marshal(r.Numbers)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestCompareEqual: the same boat twice is nothing to do, and no sheet is printed.
func TestCompareEqual(t *testing.T) {
	m := ask(t, "compare", "lake", "lake", "--cut", "gunwales,ribs")
	if !strings.Contains(strings.Join(strings.Fields(m.said), " "), "there is nothing to do") || strings.Contains(m.said, "make again") || len(m.files) > 0 {
		t.Errorf("told:\n%s", m.said)
	}
}

// TestCompareFar: boats that share little are compared all the same.
func TestCompareFar(t *testing.T) {
	for _, pair := range [][2]string{{"brook", "river"}, {"river", "lake"}} {
		m := ask(t, "compare", pair[0], pair[1], "--paper", "a4", "--units", "imperial")
		if !strings.Contains(m.said, "Marks that are") {
			t.Errorf("%v:\n%s", pair, m.said)
		}
	}
}

// TestCompareRefused: what cannot be compared is said in one line.
func TestCompareRefused(t *testing.T) {
	w := world()
	w.Files = InMemory(map[string][]byte{"bad.toml": []byte("title = 3"), "empty.toml": nil})
	for _, c := range []struct{ args, want string }{
		{"brook", "two designs"}, {"bad.toml brook", "bad.toml"}, {"empty.toml brook", "is empty"}, {"none.toml brook", "none.toml"}, {"brook none.toml", "none.toml"},
		{"brook lake --cut masts", "cut: "}, {"brook lake --cut ribs:A99", "A11 to F11"}, {"brook lake --prices dear", "prices: "},
	} {
		_, err := asked(t, "compare", strings.Fields(c.args)...).Do(w)
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v, want %q", c.args, err, c.want)
		}
	}
	if _, err := asked(t, "loft", "brook", "--since", "none.toml").Do(w); err == nil || !strings.Contains(err.Error(), "none.toml") {
		t.Errorf("since none: %v", err)
	}
}

// BenchmarkComparing is the whole verb for lake with an edition 15 mm wider.
func BenchmarkComparing(b *testing.B) {
	old, err := design.Shipped("lake")
	if err != nil {
		b.Fatal(err)
	}
	new := old.Copy()
	new.Hull.Beam += 15
	var file bytes.Buffer
	if err := design.Encode(&file, new); err != nil {
		b.Fatal(err)
	}
	w := world()
	w.Files = InMemory(map[string][]byte{"new.toml": file.Bytes()})
	for b.Loop() {
		if _, err := asked(b, "compare", "lake", "new.toml").Do(w); err != nil {
			b.Fatal(err)
		}
	}
}

// TestPrintsAsCompared: a comparison and the sheets since the older edition tell of the same
// number of sheets, some of which would still serve.
func TestPrintsAsCompared(t *testing.T) {
	file := strings.Replace(shippedText(t, "brook"), `at = '50 mm'`, `at = '50.6 mm'`, 1) // the thwart's
	w := world()
	w.Files = InMemory(map[string][]byte{"deep.toml": []byte(file)})
	compared := strings.Join(strings.Fields(do(t, asked(t, "compare", "brook", "deep.toml"), w).said), " ")
	lofted := strings.Join(strings.Fields(do(t, asked(t, "loft", "deep.toml", "--since", "brook", "--nest", "quick"), w).said), " ")
	say := regexp.MustCompile(`print (\d+) sheets of (\d+); .* of those to print (\d+) would`).FindStringSubmatch(compared)
	if say == nil || say[3] == "0" {
		t.Fatalf("no sheet would still serve:\n%s", compared)
	}
	if !strings.Contains(lofted, say[2]+" sheets of letter") || !strings.Contains(lofted, say[1]+" of them printed") {
		t.Errorf("compared: print %s sheets of %s; lofted: %s", say[1], say[2], lofted[:min(300, len(lofted))])
	}
}
