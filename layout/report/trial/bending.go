package trial

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Bending tells whether the wood takes each bend and what holds the shape.
func Bending(b Balance, units measure.System) []report.Block {
	l := report.Letters{Units: units}
	out := append([]report.Block{report.Chapter("Bends and balance")}, verdicts(b.Report.Findings)...)
	out = append(out, report.Section("Ribs"), ribsInSteam(b.Report), firstRib(b.Report, l), ribTable(b.Report, l),
		report.Caution{Words: "Bend one rib and look at it before you bend the others. Steam scalds: vent the box and wear gauntlets.", Says: "common practice; limits of steamed bends are from memory, stresses are for clear, straight wood"})
	out = append(out, PushedIn(b.Report, b.Loose, l)...)
	out = append(append(out, report.Section("Spreaders")), Spreaders(b.Report, l)...)
	out = append(append(out, under(AtRestGunwales(b.Report, l))...), gunwales(b.Report, l))
	out = append(append(out, EdgeSet(b.Report, l)...), b.held(l)...)
	out = append(out, HowTrue(b.Hands, b.Report, l)...)
	return append(out, report.Paragraph{Words: report.Promise})
}

// verdicts says whether all can be made, first what cannot, then every part beside its
// limit, what to beware of and what would spare work.
func verdicts(l finding.List) []report.Block {
	out := []report.Block{report.Section("Will the wood take it")}
	fails, wary, cures := curesOf(l)
	if len(fails) == 0 {
		out = append(out, report.Paragraph{Words: "Everything can be made as the design says."})
	} else {
		out = append(out, report.Caution{Words: "NOT everything can be made as the design says:"}, report.List{Items: fails})
	}
	out = append(out, verdictTable(l))
	if len(wary) > 0 {
		out = append(out, report.Paragraph{Words: "What may bear too much, and what helps:"}, report.List{Items: wary})
	}
	if len(cures) > 0 {
		out = append(out, report.Paragraph{Words: "What would spare work:"}, report.List{Items: cures})
	}
	return out
}

// curesOf words what does not pass, what helps where a caution stands, and what would make
// easier what passes.
func curesOf(l finding.List) (fails, wary, cures []string) {
	for _, f := range l.Sorted() {
		switch {
		case !f.Verdict.Passes():
			words := f.About + ": " + f.Verdict.String()
			for _, w := range []string{f.Text, f.Cure} {
				if !strings.Contains(words, w) { // the text may say the cure
					words += "; " + w
				}
			}
			fails = append(fails, words)
		case f.Cure != "" && f.Verdict.Danger():
			wary = append(wary, f.About+": "+f.Cure)
		case f.Cure != "":
			cures = append(cures, f.About+": "+f.Cure)
		}
	}
	return fails, wary, cures
}

func verdictTable(l finding.List) report.Table {
	t := report.Titled("").Words("Part").Names("Verdict").Numbers("Has", "Limit").Names("Unit").Numbers("Room").Noted("r/t is the inner radius over thickness, for ribs as they are bent hot: more is easier. N/mm2 is a stress: less is easier. \"Dry, eases\" lies between what wood bears for years and what it is bent to once: such a part gives up some of its spring.")
	for _, f := range l.Sorted() {
		row := []string{f.About, f.Verdict.String(), "", "", "", ""}
		if f.IsSet() {
			row = append(row[:2], report.Number(f.Value), report.Number(f.Limit), strings.ReplaceAll(f.Unit, "radius/thickness", "r/t"), share(f.Margin()))
		}
		t.Row(row...)
	}
	return t
}

// share letters a margin; what is far off needs no figure.
func share(margin float64) string {
	if margin >= 9.99 {
		return "ample"
	}
	return fmt.Sprintf("%+.0f%%", 100*margin)
}

// ribsInSteam says how ribs are steamed, and how they dry.
func ribsInSteam(r *bend.Report) report.Paragraph {
	d, wood := r.Frame.Design, r.Boat.Ribs
	how := "bent in place, by hand and eye, beyond their marks"
	if r.OnForms() {
		how = fmt.Sprintf("bent on forms (%d), made tighter", len(r.Forms))
	}
	called := wording.Capital(wood.Name)
	if d.Bending.Stock != design.AirDried { // the usual
		called += ", " + d.Bending.Stock.String()
	}
	words := fmt.Sprintf("%s, steam %.0f minutes at %.0f %% moisture; %s for %.0f %% of springback.", called, r.Ribs[0].Minutes, d.Bending.Moisture, how, 100*d.Bending.Springback)
	if least := r.LeastMoisture; d.Bending.Moisture < least {
		words += fmt.Sprintf(" Such bends want stock of at least %.0f %%: soak it, or take air-dried stock.", least)
	}
	if mm := r.Shrink; mm > 0 {
		words += fmt.Sprintf(" Drying to %.0f %% they shrink up to %.1f mm in thickness (%s): fit them dry.", timber.ServiceMoisture, mm, wood.Movement)
	}
	return report.Paragraph{Words: words}
}

// firstRib says how little is known of springback before a rib is bent, and how the first
// one tells it.
func firstRib(r *bend.Report, l report.Letters) report.Paragraph {
	rib, at := r.Ribs[r.TestRib()], r.Expected()
	return report.Paragraph{Words: fmt.Sprintf("Springback is not known to better than %.0f points of a hundred before the first rib of a board is bent: that is %s %s of free width at rib %s. Bend that rib first, measure its free width cold, and set bending.springback to %.2f, and 0.01 more for each %s that it stands wider than %s %s.",
		100*timber.SpringbackDoubt, l.Rough(100*timber.SpringbackDoubt*rib.Point), l.Unit(), rib.Name, at.Back, l.Point(rib.Point), l.Rough(at.Width), l.Unit())}
}

// ribTable says how wide each rib is held hot and what it is relaxed to, how it pushes,
// and how tight it is bent.
func ribTable(r *bend.Report, l report.Letters) report.Table {
	held, bent := "Held hot", "Hot radius, from the keel out"
	if r.OnForms() {
		held, bent = "On form", "Form radius, from the keel out"
	}
	t := report.Titled("Widths between the heads and radii, to the middle of the thickness, "+l.Unit()).Names("Rib").Numbers("In place", held, "Relax to", "Push, N", "Stress, N/mm2").Words(bent)
	for i, rib := range r.Ribs {
		relax, hot := "-", "-"
		if rib.Relax > 0 {
			relax = l.Rough(rib.Relax)
		}
		if rib.Hot > 0 {
			hot = l.Rough(rib.Hot)
		}
		arcs := wording.List(rib.Arcs, func(a bend.Arc) string { return a.Name + " " + radius(a.Form, l.Whole) })
		t.Row(rib.Name, l.Whole(2*r.Frame.Ribs[i].Section.HalfBreadth), hot, relax, report.Signed(rib.Push), report.Number(rib.Stress), arcs)
	}
	return t.Outward(r.Frame.Stations())
}

// radius letters a radius; one of more than 100 m is no bend.
func radius(mm float64, letter func(mm float64) string) string {
	if mm > 1e5 {
		return "straight"
	}
	return letter(mm)
}

// AtRestGunwales lists how the finished gunwales are bent.
func AtRestGunwales(r *bend.Report, l report.Letters) report.Table {
	g := r.Gunwale
	return report.Facts("Gunwales at rest", "tightest radius in plan", radius(g.Radius, l.Length), "at station", l.Station(g.At),
		"share of a form's curvature that plies glued on it lose", fmt.Sprintf("%.0f %%", 100*g.Back),
		"greatest stress at rest", fmt.Sprintf("%.1f N/mm2, at %s", g.Rest.Sum(), l.Station(g.Rest.X)))
}

// gunwales says how they are glued, what they keep of their curve and what mortises leave of them.
func gunwales(r *bend.Report, l report.Letters) report.Paragraph {
	g, d, b := r.Gunwale, r.Frame.Design, r.Boat
	words := fmt.Sprintf("%s, %d plies, glued %s. ", wording.Capital(b.Wood.Name), d.Gunwale.Plies, glued(d))
	if d.Gunwale.Plies > 1 {
		words += fmt.Sprintf("Plies are %.1f mm and lose %.0f %% of a form's curve: a form for the designed curve has a radius of %s where it is tightest, and everywhere %.3f of the gunwale's own. ",
			g.Ply, 100*g.OnForm, radius(g.Form, l.Length), 1-g.OnForm)
	}
	words += fmt.Sprintf("By themselves they keep %.0f %% of the designed curve; ribs and cross pieces hold the rest. At rest they bear %.1f N/mm2 in plan and %.1f N/mm2 from edge-set; the wood breaks at about %.0f N/mm2. ",
		100*b.Glue.Kept, g.Rest.Plan, g.Rest.Edge, b.Wood.MOR)
	if wide := r.SquareTenon; wide < float64(d.Ribs.Width) {
		words += fmt.Sprintf("Mortises cut by a bit of %.1f mm have half-round ends and take a sharp-edged rib of %.1f mm: square them, or round the rib's edges there. ", r.Frame.Gunwale.Mortises[0].Width, wide)
	}
	least := slices.MinFunc(r.Slots, func(a, b bend.Hole) int { return cmp.Compare(a.Tall, b.Tall) })
	words += fmt.Sprintf("A mortise with its peg leaves %.0f %% of the section modulus in plan, %.0f %% in the tall way. ", 100*least.Flat, 100*least.Tall)
	if r.Bolted != nil {
		least = slices.MinFunc(r.Bolted, func(a, b bend.Hole) int { return cmp.Compare(a.Flat, b.Flat) })
		words += fmt.Sprintf("A bolt of %s leaves %.0f %% and %.0f %%. ", least.Of, 100*least.Flat, 100*least.Tall)
	}
	return report.Paragraph{Words: words + "The wood that they take out bore a share of the stress at rest; the wood beside it takes that over."}
}

func glued(d *design.Design) string {
	switch d.Gunwale.Glued {
	case design.GluedBent:
		return "bent round the spreaders"
	case design.GluedOnForm:
		return "on a form"
	}
	return "straight"
}
