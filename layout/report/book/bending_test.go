package book

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout/report"
	"ribwright/layout/typeset"
)

// steps are what is done at each stage of the order of work, by the stage's first word.
func steps(b report.Report) map[string]string {
	out, stage := map[string]string{}, ""
	for _, k := range b.Blocks {
		switch k := k.(type) {
		case report.Heading:
			stage, _, _ = strings.Cut(k.Words, ", ")
		case report.List:
			out[stage] += strings.Join(k.Items, "\n") + "\n"
		}
	}
	return out
}

// toolsOf returns what each step of the order of work names as tools and to hand.
func toolsOf(b report.Report) map[string]string {
	out, stage := map[string]string{}, ""
	for _, k := range b.Blocks {
		switch k := k.(type) {
		case report.Heading:
			stage, _, _ = strings.Cut(k.Words, ", ")
		case report.Table:
			for _, row := range k.Rows {
				if row[0] == "Tools" || row[0] == "To hand" {
					out[stage] += row[1] + "; "
				}
			}
		}
	}
	return out
}

// inOrder wants words in a text one after the other.
func inOrder(t *testing.T, text string, words ...string) {
	t.Helper()
	at := 0
	for _, w := range words {
		i := strings.Index(text[at:], w)
		if i < 0 {
			t.Errorf("%q does not follow in %q", w, text)
			return
		}
		at += i
	}
}

// TestOrderOfBending: in place the ribs go hot into their mortises, from midship
// outward, and stay overnight under battens before they are pegged; not a word of forms.
// On forms they are taken off and relaxed before they are fitted. Both begin with a
// frame that depth can be measured in.
func TestOrderOfBending(t *testing.T) {
	for _, method := range []design.Method{design.InPlace, design.OnForms} {
		d := shipped(t, "lake")
		d.Bending.Method = method
		keel := "join it to both stems"
		if method == design.OnForms { // and without edge-set
			d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft, keel = 0, 0, "lamp it to the feet of both stems"
		}
		f := facts(t, d, measure.Metric)
		b := sharedBook(t, f)
		do := steps(b)
		inOrder(t, do["Setting up"], keel)
		first := []string{"spread them", "trestles"} // beside the keel, which they are sprung over
		if method == design.OnForms {
			first = []string{"trestles", "Spread the gunwales"}
		}
		inOrder(t, do["Setting up"], append(first, "Glue the breasthooks in", "drive them", "it stands at the depths", "Measure beam and depth", "straightedge to the keel")...)
		if strings.Contains(do["Ribs"], "Measure beam and depth") {
			t.Errorf("%v: depth is measured among the ribs", method)
		}
		if method == design.InPlace {
			inOrder(t, do["Ribs"], "0.3 mm longer than the rib is wide", "6 spare blanks", "cut both ends off at the tenon line, 20 mm past", "12 mm to spare still on", "rib M first", "Soak no other rib", "Soak the other blanks", "outward in pairs", "one bilge after the other", "into its mortise while the rib is hot", "the middle down on the keel", "the keel's mark of that rib midway", "ties it there",
				"When three ribs are in, tie a batten along each bilge, 20.0 mm by 11.0 mm", "Tie every rib that they reach to both battens as it goes in", "overnight", "Relax", "peg")
			if strings.Contains(do["Ribs"], " form ") || strings.Contains(do["Ribs"], " forms") {
				t.Errorf("in place the work on the ribs speaks of forms: %q", do["Ribs"])
			}
			if _, there := tables(b)["Forms for bending ribs, mm"]; there {
				t.Error("in place the book lists forms")
			}
			continue
		}
		inOrder(t, do["Ribs"], "Saw the form for rib M", "rib M first", "soak it", "Soak no other rib", "the other forms, 14 in all", "Soak the other blanks", "Clamp the middle", "tie a lath", "gauge", "relax", "Cut both ends off at the tenon line", "from midship outward in pairs", "peg")
		if n := len(tables(b)["Forms for bending ribs, mm"].Rows); n != len(f.Frame.RibGroups) {
			t.Errorf("%d forms are listed for %d groups", n, len(f.Frame.RibGroups))
		}
		sheet := sheet(t, "letter")
		doc, err := typeset.Lay(b, sheet)
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range doc.Sheets {
			apart(t, fmt.Sprintf("sheet %d", i+1), s, sheet.Area)
		}
	}
}

// TestFreeWidthsInSteps: every width that is bent or relaxed by hand is told in whole
// 5 mm, within half a step of what was worked out.
func TestFreeWidthsInSteps(t *testing.T) {
	f := facts(t, shipped(t, "river"), measure.Metric)
	all := tables(sharedBook(t, f))
	check := func(cell string, want float64) {
		t.Helper()
		mm, err := strconv.Atoi(cell)
		if err != nil || mm%5 != 0 || math.Abs(float64(mm)-want) > 2.5+1e-9 {
			t.Errorf("%q is told for %.2f mm: %v", cell, want, err)
		}
	}
	for _, r := range f.Bend.Ribs {
		row := rowOf(t, all["Lengths and widths, mm"], r.Name)
		check(row[4], r.Hot)
		check(row[5], r.Relax)
	}
	for i, row := range all["Rib M, free width measured, mm"].Rows {
		back := 0.04 * float64(i) // and so the 8 % of the design
		k := slices.IndexFunc(f.Bend.Test, func(s bend.Sprung) bool { return math.Abs(s.Back-back) < 1e-9 })
		check(row[0], f.Bend.Test[k].Width)
		if want := fmt.Sprintf("%d %%", 4*i); row[1] != want {
			t.Errorf("%s mm is %s, want %s", row[0], row[1], want)
		}
	}
}

// TestMirroredRibs: a boat that is alike fore and aft tells of a rib and its mirror once,
// in the order in which ribs go in; one whose ends differ keeps them apart.
func TestMirroredRibs(t *testing.T) {
	for name, want := range map[string][]string{"lake": {"M", "A1, F1", "A2, F2"}, "river": {"M", "A1", "F1"}} {
		f := facts(t, shipped(t, name), measure.Metric)
		all := tables(sharedBook(t, f))
		for _, title := range []string{"Lengths and widths, mm", "Bends, from the middle of the blank, mm", "Middles of the stringers, from the middle of the blank, mm",
			"Ribs only pushed in, heads loose to heads tight; lengths in mm", "Depths from a straightedge across the gunwales, and corrections of length, mm"} {
			for i, w := range want {
				if rows := all[title].Rows; len(rows) <= i || rows[i][0] != w {
					t.Errorf("%s, %s: row %d is not of %s", name, title, i, w)
				}
			}
			for _, r := range f.Frame.Ribs {
				rowOf(t, all[title], r.Name)
			}
		}
	}
}

// TestEachHundredth: what a hundredth of springback does to the free ribs is told once,
// from the least to the most of all ribs, and not at all where none is bent.
func TestEachHundredth(t *testing.T) {
	for want, points := range map[string][]float64{"8 to 10 mm": {8.2, 7.7, 10.1}, "8 mm": {7.7, 8.4}, "": {0, 0}} {
		w := writer{Facts: Facts{Bend: &bend.Report{}}}
		for _, p := range points {
			w.Bend.Ribs = append(w.Bend.Ribs, bend.Rib{Point: p})
		}
		if got := w.each(); got != want {
			t.Errorf("%v are told as %q, want %q", points, got, want)
		}
	}
}

// TestDepthsFromStraightedge: a rib's inside lies a rib's thickness above the keel's
// upper face, and the straightedge a gunwale's height over the depth drawn: H cos t +
// W/2 sin t for a gunwale W by H that leans by t, less than 1 mm more where an edge-set
// turns it.
func TestDepthsFromStraightedge(t *testing.T) {
	f := facts(t, shipped(t, "lake"), measure.Metric)
	d := f.Frame.Design
	table := tables(sharedBook(t, f))["Depths from a straightedge across the gunwales, and corrections of length, mm"]
	for i, r := range f.Frame.Ribs {
		row := rowOf(t, table, r.Name)
		keel, errA := strconv.ParseFloat(row[1], 64)
		rib, errB := strconv.ParseFloat(row[2], 64)
		sin, cos := math.Sincos(float64(d.Gunwale.Tilt))
		high := float64(d.Gunwale.Height)*cos + float64(d.Gunwale.Width)/2*sin
		want := f.Frame.Ribs[i].Section.Depth + high - f.Frame.Ribs[i].Thickness/2
		if errA != nil || errB != nil || math.Abs(rib-want) > 1.5 || math.Abs(keel-rib-f.Frame.Ribs[i].Thickness) > 1 {
			t.Errorf("rib %s: %v, want %.1f mm to its inside", row[0], row, want)
		}
	}
}

// TestOrderOfHolding: spreaders are cut before they are first used and come out last, the
// strap after the sticks; cross pieces are cut to the frame that ribs hold. Where no
// neutral set holds it they go in before the ribs and stay.
func TestOrderOfHolding(t *testing.T) {
	for _, glued := range []string{design.GluedBent, design.GluedStraight, design.GluedOnForm} {
		d := shipped(t, "lake")
		d.Gunwale.Glued = glued
		f := facts(t, d, measure.Metric)
		do := steps(sharedBook(t, f))
		stage := do["Setting up"]
		if glued == design.GluedBent {
			stage = do["Gunwales"]
			inOrder(t, stage, "no block between", "about 22 mm apart", "the lean comes later")
		}
		inOrder(t, stage, "square notch", "inner walls stand apart by the width between the inner lower edges", "stays free", "Set the notched sticks at")
		if n := strings.Count(do["Gunwales"]+do["Setting up"], "square notch"); n != 1 {
			t.Errorf("%s: spreaders are cut %d times", glued, n)
		}
	}
	f := own(t, shipped(t, "lake"))
	do := steps(bookOf(t, f))
	inOrder(t, do["Keel and stringers"], "Lash the keel first", "take the ties off", "Lash the stringers", "each cross piece, with the spreaders still in", "take the spreaders out", "the sticks first", "the strap last")
	if strings.Contains(do["Setting up"], "cross piece") {
		t.Error("cross pieces are fitted before the ribs hold the frame")
	}
	f.Bend.Boat.Why = &finding.Finding{Text: "too stiff"}
	do = steps(bookOf(t, f))
	inOrder(t, do["Setting up"], "no neutral set", "Fit the cross pieces now", "stay in")
	inOrder(t, do["Ribs"], "overnight", "peg all heads")
	for _, w := range []string{"each cross piece", "free widths"} {
		if strings.Contains(do["Ribs"]+do["Keel and stringers"], w) {
			t.Errorf("without a neutral set the steps tell of %q", w)
		}
	}
	f.Frame.Design.Bending.Method = design.OnForms
	if said := steps(bookOf(t, f))["Ribs"]; strings.Contains(said, "relax it") {
		t.Errorf("without a neutral set ribs are relaxed to no width: %q", said)
	}
	f.Frame.Thwarts, f.Bend.Joints.Cross = nil, nil
	if do := stepsOf(bookOf(t, f)); strings.Contains(do, "cross piece") {
		_, do, _ = strings.Cut(do, "cross piece")
		t.Errorf("a frame without cross pieces is told to fit them: before %.60q", do)
	}
}

// TestStringerEnds: each length that the report has as hot is in the table with its ties, its
// places on the straight stick and its minutes, and the steps name the stringers that have
// one, and no others.
func TestStringerEnds(t *testing.T) {
	const title = "Lengths to steam, along the straight stick from midship, mm"
	f := own(t, shipped(t, "river"))
	b := bookOf(t, f)
	said, table := steps(b)["Keel and stringers"], tables(b)[title]
	var names []string
	n := 0
	for _, s := range f.Bend.Stringers {
		for i, h := range s.Hot {
			if i == 0 {
				names = append(names, fmt.Sprintf("S%d", s.Number))
			}
			row := table.Rows[n]
			if n++; row[0] != fmt.Sprintf("S%d", s.Number) || row[2] != measure.MM(5*math.Round(h.Along.From/5), 0) || row[3] != measure.MM(5*math.Round(h.Along.To/5), 0) || row[4] != fmt.Sprintf("%.0f", s.Minutes) {
				t.Errorf("row %v, want %+v", row, h)
			}
		}
	}
	if n == 0 || len(table.Rows) != n {
		t.Errorf("%d lengths are told, of %d", len(table.Rows), n)
	}
	inOrder(t, said, "Feather their ends now", "Lash the keel first", strings.Join(names, ", ")+" stay loose", "Steam each of those lengths", "The longest sleeve is ", "clamp it to one rib after another", "Wring it", "until it is cold", "each cross piece")
	if strings.Contains(said, "S4") || strings.Contains(said, "thinner") {
		t.Errorf("an end that bends dry is steamed, or a stringer is planed: %q", said)
	}
	for i := range f.Bend.Stringers {
		f.Bend.Stringers[i].Hot = nil
	}
	b = bookOf(t, f)
	if said := steps(b)["Keel and stringers"]; strings.Contains(said, "team") || strings.Contains(said, "boiler") {
		t.Errorf("ends that bend dry are steamed: %q", said)
	}
	if _, there := tables(b)[title]; there {
		t.Error("an empty table tells of steam")
	}
}
