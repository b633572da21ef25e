package book

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// stepsOf gathers the order of work.
func stepsOf(b report.Report) string {
	var out []string
	for _, k := range b.Blocks {
		if l, ok := k.(report.List); ok {
			out = append(out, l.Items...)
		}
	}
	return strings.Join(out, "\n")
}

// TestOrderOfEdgeSet: keel and stems are joined before the gunwales are spread, the set is
// sprung after, and props go when the keel is lashed and before the stringers are; a boat
// without a set is told nothing of it.
func TestOrderOfEdgeSet(t *testing.T) {
	d := shipped(t, "brook")
	steps := stepsOf(sharedBook(t, facts(t, d, measure.Metric)))
	var at []int
	for _, w := range []string{"beside the place of the boat, and spread them", "Tie them a hand's length", "join it to both stems", "keel on three blocks", "two trestles across the keel", "lower them until their ends lie on the shelves", "Now spring the edge-set", "Draw the gunwales down", "over midship's", "Glue the breasthooks in", "stays joined to both stems", "Lash the keel first", "Take the props away", "Lash the stringers", "each cross piece, with the spreaders still in", "take the spreaders out"} {
		at = append(at, strings.Index(steps, w))
	}
	if at[0] < 0 || !slices.IsSorted(at) {
		t.Errorf("the steps stand at %v", at)
	}
	d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0
	b := sharedBook(t, facts(t, d, measure.Metric))
	for _, w := range []string{"edge-set", "props"} {
		if strings.Contains(stepsOf(b), w) {
			t.Errorf("a boat without edge-set is told of %q", w)
		}
	}
}

// TestMadeInTheBook: the curve stands in a table from where it begins to the gunwales' end
// and is sawn before anything is marked; nothing is sprung, propped or marked on straight
// stock then. With a part of it made both are told.
func TestMadeInTheBook(t *testing.T) {
	d := shipped(t, "brook")
	d.Gunwale.EdgeSetMade = d.Gunwale.EdgeSetBow
	b := sharedBook(t, facts(t, d, measure.Metric))
	steps := stepsOf(b)
	for _, w := range []string{"spring the edge-set", "props", "While the stock is straight"} {
		if strings.Contains(steps, w) {
			t.Errorf("gunwales made to the sheer: %q", w)
		}
	}
	saw, mark := strings.Index(steps, "Set off the heights of the table The sheer to saw"), strings.Index(steps, "Before the stock is bent or sprung, mark")
	if saw < 0 || mark < saw {
		t.Errorf("the curve is sawn at %d, marks are made at %d", saw, mark)
	}
	var rows [][]string
	for _, block := range b.Blocks {
		if table, ok := block.(report.Table); ok && strings.HasPrefix(table.Title, "The sheer to saw") {
			rows = table.Rows
		}
	}
	// 30 mm square to stock that leans by brook's tilt.
	if want := measure.MM(30*math.Cos(float64(d.Gunwale.Tilt)), 1); len(rows) < 8 || rows[len(rows)-1][2] != want {
		t.Errorf("want %s mm in the last row of %q", want, rows)
	}
	d.Gunwale.EdgeSetMade = 10
	steps = stepsOf(sharedBook(t, facts(t, d, measure.Metric)))
	for _, w := range []string{"The sheer to saw", "blocks of one height, under their straight middles", "Now spring the edge-set"} {
		if !strings.Contains(steps, w) {
			t.Errorf("a part of it made: no %q", w)
		}
	}
}

// TestTrestles: a bar stands as high over the keel as the two ribs beside it are deep to the keel's
// face, and as much higher as the free middle asks; its legs are clear of the beam over all; what
// is told to hold is what the facts say.
func TestTrestles(t *testing.T) {
	f := facts(t, shipped(t, "lake"), measure.Metric)
	w := &writer{Facts: f}
	for _, h := range w.trestlesAt() {
		deep, n := 0.0, 0.0
		for _, r := range f.Frame.Ribs {
			if r.Name == h.Between[0] || r.Name == h.Between[1] {
				deep, n = deep+r.Section.Depth+r.Thickness/2, n+1
			}
		}
		if want := deep/n + h.Over; math.Abs(w.barOver(h)-want) > 0.5 {
			t.Errorf("a bar %.1f mm over the keel, want %.1f", w.barOver(h), want)
		}
		for _, r := range f.Frame.Ribs {
			if math.Abs(r.Station-h.At) < float64(f.Frame.Design.Ribs.Width)/2+20 {
				t.Errorf("a trestle at %.0f mm stands where rib %s comes", h.At, r.Name)
			}
		}
	}
	if legs := w.legsApart(); legs < f.Frame.Hull.Beam+100 {
		t.Errorf("legs %.0f mm apart", legs)
	}
	said := steps(sharedBook(t, f))["Setting up"]
	inOrder(t, said, fmt.Sprintf("stands %.0f mm over the floor and %.0f mm over the keel", w.looseTop(w.trestlesAt()[0]), w.barOver(w.trestlesAt()[0])), fmt.Sprintf("by up to %.0f kg", w.pull()/measure.Gravity), "Nothing holds them amidships")
}

// TestTrestlesComeOut: what the list of helps, the steps and the figure say of a trestle is one
// thing; its bar is longer than its legs are apart, clears the keel, and goes through its bay; it
// is taken out when nothing is tied to it and before stringers cross the bay, and the frame is
// lifted off its blocks, which stand clear of the ribs, before it is smoothed. With and without
// edge-set.
func TestTrestlesComeOut(t *testing.T) {
	for _, set := range []bool{true, false} {
		d := shipped(t, "river")
		if !set {
			d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0
		}
		f := facts(t, d, measure.Metric)
		w, b := &writer{Facts: f}, sharedBook(t, f)
		bar, legs, wide := w.Length(w.barLong()), w.Length(w.legsApart()), w.Length(w.barWide())
		inOrder(t, steps(b)["Setting up"], "two trestles", "a bar "+wide+" wide", bar+" long or more", legs+" apart inside or more", "held by bolts")
		rows := tables(b)["Helps that the work needs and the boat does not keep"].Rows
		said := ""
		for _, r := range rows {
			said += strings.Join(r, " ") + "\n"
		}
		inOrder(t, said, "a bar "+wide+" wide", bar, legs+" apart", "loose bars", wide+" wide", w.Length(w.looseLong()), "keel blocks", "upright planks")
		if w.barLong() < w.legsApart()+2*legWide || w.looseLong() <= w.barLong() {
			t.Errorf("bars of %v and %v over legs %v apart", w.barLong(), w.looseLong(), w.legsApart())
		}
		for _, h := range w.trestlesAt() {
			keel, _ := f.Frame.Hull.KeelZ(h.At)
			if air := w.barTop(h) - barTall - (keelUp + keel + w.keelTall()); air < 50 {
				t.Errorf("the bar lies %.0f mm over the keel", air)
			}
			if under := w.looseTop(h) - loose - w.barTop(h); under < shims || under > shims+5 {
				t.Errorf("%.0f mm of shims", under)
			}
			for _, r := range f.Frame.Ribs {
				if off := math.Abs(r.Station - h.At); off < (float64(f.Frame.Design.Ribs.Width)+w.barWide())/2+barFree {
					t.Errorf("rib %s is in the bar's way", r.Name)
				}
			}
		}
		for _, x := range w.keelBlocks() {
			for _, r := range f.Frame.Ribs {
				if math.Abs(r.Station-x) < (float64(f.Frame.Design.Ribs.Width)+blockOn)/2 {
					t.Errorf("a block at %.0f mm stands under rib %s", x, r.Name)
				}
			}
		}
		inOrder(t, stepsOf(b), "Lash the keel first", "draw the loose bars out", "Now take the trestles out", "unbolt the legs of one side", "Lash the stringers", "take the spreaders out", "lift the frame off its blocks", "Run a stocking over the outside")
	}
}

// TestBarsInNarrowBays: bars come out between ribs that stand close, and are told as they are.
func TestBarsInNarrowBays(t *testing.T) {
	d := shipped(t, "brook")
	d.Ribs.Pitch, d.Thwarts = 70, nil
	f := facts(t, d, measure.Metric)
	w := &writer{Facts: f}
	if wide := w.barWide(); wide != 30 || !strings.Contains(w.aTrestle(), "a bar 30 mm wide") { // 70 - 20 of a rib - 2 x 10
		t.Errorf("bars of %.0f mm in bays of 70: %s", wide, w.aTrestle())
	}
}

// TestEndsLift: a plane curve that is turned by an angle about its middle rises at its ends by its
// sag times the sine of the angle (trigonometry); the sag of a gunwale in its own plane is that
// seen from above over the cosine.
func TestEndsLift(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		g := &f.Frame.Gunwale
		_, fore := g.Line.Ends()
		lift := (g.At(0, 0, 0).Y - g.At(fore, 0, 0).Y) / math.Cos(g.Tilt) * math.Sin(g.Tilt)
		said := (&writer{Facts: f}).endsLift()
		if want := fmt.Sprintf("by %.0f mm", lift); !strings.Contains(said, want) {
			t.Errorf("%s: no %q in %q", name, want, said)
		}
	}
}

// TestStraightedgeBesideSticks: at a rib whose place a spreader's stick takes the straightedge is
// told to lie beside it, at no other. brook's sticks lie at 900 mm, clear by 25 mm of ribs A7 and F7, and
// at midship on rib M.
func TestStraightedgeBesideSticks(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		said := (&writer{Facts: f}).besideSticks()
		for _, r := range f.Frame.Ribs {
			near := math.Inf(1)
			for _, s := range f.Bend.Spread.Spreaders {
				near = math.Min(near, math.Abs(s.At-r.Station))
			}
			if told := regexp.MustCompile(`(forward|aft) of the stick at ` + r.Name + `\b`).MatchString(said); told != (near < 25) {
				t.Errorf("%s, rib %s, %.0f mm off a stick: %q", name, r.Name, near, said)
			}
		}
	}
}

// TestWaterBoilsOff: 2 kW boil away 3.19 kg an hour: 7.2 MJ by 2.257 MJ/kg (steam tables).
func TestWaterBoilsOff(t *testing.T) {
	if got := boiledOff(2000, 1); math.Abs(got-3.19) > 0.005 {
		t.Errorf("%.3f l", got)
	}
}

// TestHornToHorn: the gunwales' ends stand flat against the horns, so that the stems are as far
// apart there as the ends of the gunwales' line in the boat, within a millimeter of rounding.
func TestHornToHorn(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		aft, fore := f.Frame.Gunwale.Line.Ends()
		m := regexp.MustCompile(`From horn to horn, just over the shelves, it is then (\d+) mm`).FindStringSubmatch(stepsOf(sharedBook(t, f)))
		if m == nil {
			t.Fatalf("%s: no distance from horn to horn", name)
		}
		if mm, _ := strconv.ParseFloat(m[1], 64); math.Abs(mm-(fore-aft)) > 1 {
			t.Errorf("%s: %.0f mm from horn to horn, the gunwales are %.1f mm long between their ends", name, mm, fore-aft)
		}
	}
}
