package book

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/kit"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// outfits tells what the design has aboard besides the boat.
func (w *writer) outfits() {
	o := w.Outfits
	kits := o.Kits()
	if len(kits) == 0 && len(o.Findings) == 0 {
		return
	}
	w.chapter("Outfits")
	w.say("What the design adds to the boat for a while. Full-size patterns are made by ribwright sail, pair and row with --loft; no line of this book may be cut by. Every piece is in the cut list under an X, what is bought in the shopping list, the work in the hours.")
	w.told(o.Findings, nil)
	w.lies()
	for _, k := range kits {
		switch outfit.Name(k.Name) {
		case outfit.Sail:
			w.sailing(o.Sail)
		case outfit.Pair:
			w.pairing(o.Pair)
		case outfit.Row:
			w.rowing(o.Row)
		}
		w.add(w.pieces(k))
	}
	w.warn("Wear a life jacket. Try every outfit in shallow water near help, swamped and with flotation fitted, before you rely on it. Every strength here is an estimate from clear wood at rest; nothing here certifies a boat.", "common practice; local law and the authority of the water come first")
}

// lies is how the boat lies on the water with each outfit, its own people aboard.
func (w *writer) lies() {
	t := report.Table{Title: "How the boat lies with the design's people and gear, " + w.Unit(),
		Columns: []report.Column{text("With"), figures("Outfit"), figures("All up"), figures("Draught"), figures("Bow up by"), figures("Least freeboard")},
		Note:    "Bow up by is over the length of the waterline; less than nothing is bow down; - where it does not float upright. Of a pair one hull has half of the beams. The rower on the rowing seat is told of under Rowing, the two hulls as one under Pair."}
	var faults []afloat.Outfitted
	for _, l := range w.Outfitted {
		row := []string{l.With, w.Mass(l.Added), w.Mass(l.All.Mass), "-", "-", "-"}
		if l.Fault != nil {
			faults = append(faults, l)
		} else {
			row = append(row[:3], w.Cell(l.Rest.Draft), w.Cell(math.Tan(l.Rest.Trim)*l.Rest.LWL), w.Cell(l.Rest.Freeboard.Least))
		}
		t.Rows = append(t.Rows, row)
	}
	w.add(t)
	for _, l := range faults {
		w.warn("With "+l.With+" it does not float upright: "+l.Fault.Error()+".", "arithmetic of this design")
	}
}

// pieces lists what an outfit is made of.
func (w *writer) pieces(k kit.Kit) report.Table {
	t := report.Table{Title: wording.Capital(k.Name) + ": what it is made of, " + w.Unit(), Columns: []report.Column{text("Piece"), figures("Count"), text("Wood, or how much"), figures("Long"), figures("Wide"), figures("Thick")}}
	for _, p := range k.Pieces {
		t.Rows = append(t.Rows, []string{wording.Capital(p.Name), fmt.Sprint(p.Count), p.Wood, w.Cell(p.Long), w.Cell(p.Wide), w.Cell(p.Thick)})
	}
	for _, b := range k.Things {
		t.Rows = append(t.Rows, []string{wording.Capital(b.Name), "", amount(b), "", "", ""})
	}
	t.Note = "Finished sizes, of a shaped piece the block it is sawn from, of a spar where it is thickest. Beams and saddles are those of both boats."
	return t
}

// amount letters how much of a thing is bought.
func amount(t kit.Thing) string {
	if t.Unit == "each" {
		return fmt.Sprintf("%.0f: %s", t.Amount, t.How)
	}
	return fmt.Sprintf("%.4g %s: %s", t.Amount, t.Unit, t.How)
}

// told are the findings of an outfit, dangers first, and its figures beside practice.
func (w *writer) told(all finding.List, ranges []finding.Range) {
	w.add(report.Findings{List: all})
	if len(ranges) == 0 {
		return
	}
	t := report.Table{Title: "Beside practice: habits of the trade, not limits", Columns: []report.Column{text("What"), figures("Here"), figures("Practice"), names(""), text("Source")}}
	for _, r := range ranges {
		in := ""
		if !r.Inside() {
			in = "outside"
		}
		here, span := fmt.Sprintf("%.1f %s", r.Value, r.Unit), fmt.Sprintf("%.4g to %.4g %s", r.Low, r.High, r.Unit)
		if r.Unit == "mm" {
			here, span = w.Length(r.Value), w.Length(r.Low)+" to "+w.Length(r.High)
		}
		t.Rows = append(t.Rows, []string{r.Name, here, span, in, r.Source})
	}
	w.add(t)
}

// roomy draws a sketch as large as the paper has room for.
func roomy(draw func(wide float64) layout.Drawing) layout.Drawing {
	const step = 5.0
	for wide := report.Wide; ; wide -= step {
		if d := draw(wide); d.Bounds().W() <= report.Wide || wide <= 10*step {
			return d
		}
	}
}

func (w *writer) sailing(f *sail.Fit) {
	w.section("Sail")
	w.add(report.Figure{Drawing: roomy(func(wide float64) layout.Drawing { return figure.SailSketch(f, wide) }),
		Caption: fmt.Sprintf("The %s of %.2f m2 with its reefs, not to scale: centers of the sail, and of what resists under water.", f.Sail.Rig, f.Plan.Area()),
		About:   "The boat from the side under sail, with mast, spars, reefs and leeboard."})
	t := report.Table{Title: "Wind: what to do with the crew " + f.Chosen().String(), Columns: []report.Column{text("Sail"), figures("m2"), figures("Take it in at, m/s"), figures("knots"), figures("Force"), figures("Goes over at, m/s")}}
	for i, s := range f.States[:f.Needed(f.Chosen())] {
		l, v := s.Limits[f.Chosen()], f.Wind.Reef[i]
		t.Rows = append(t.Rows, []string{s.Name, fmt.Sprintf("%.2f", s.Area), fmt.Sprintf("%.1f", v), fmt.Sprintf("%.0f", sail.Knots(v)), fmt.Sprint(sail.Beaufort(v)), sail.Over(l.Under)})
	}
	t.Note = fmt.Sprintf("No sail up at %.1f m/s (%.0f knots); %s.", f.Wind.Stop, sail.Knots(f.Wind.Stop), f.InMiddle())
	if s := f.Spared(); s != "" {
		t.Note += " " + wording.Capital(s) + "."
	}
	w.add(t, plotted(figure.SailMoments(f)))
	rows := [][]string{{"mast at", w.Station(f.Mast.At)}, {"sail's center at", w.Station(f.Mast.At + f.Plan.Center().X)}, {"resistance under water at", w.Station(f.Resists().X)}}
	if b := f.Board; b.Area > 0 {
		rows = append(rows, []string{"leeboard's bracket at", w.Station(f.BracketAt())}, []string{"leeboard under water", w.Length(b.Deep)})
	}
	rows = append(rows, []string{"push on the partner, on the step", fmt.Sprintf("%.0f N, %.0f N", f.Mast.Partner, f.Mast.Step)}, []string{"tack over the gunwale", w.Length(f.Tack - (f.Mast.PartnerZ - sail.PartnerThick/2))})
	w.add(report.Table{Title: "Places and loads", Columns: []report.Column{text("Figure"), figures("")}, Rows: rows})
	w.told(f.Findings, f.Ranges)
}

func (w *writer) pairing(c *pair.Craft) {
	w.section("Pair")
	w.add(report.Figure{Drawing: roomy(func(wide float64) layout.Drawing { return figure.PairSketch(c, wide) }),
		Caption: fmt.Sprintf("%s and %s side by side, from astern, not to scale.", c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title),
		About:   "Two hulls from astern with a beam across both."})
	_, lash := c.Worst()
	at := ""
	for i, x := range c.Beams.At {
		if i > 0 {
			at += ", "
		}
		at += w.Station(x)
	}
	w.add(report.Table{Title: "As one craft", Columns: []report.Column{text("Figure"), text("")}, Rows: [][]string{
		{"middle lines apart", w.Length(c.Spacing)}, {"beams at", at}, {"turns of cord in each lashing", fmt.Sprint(pair.Turns(lash))},
		{"all up", w.Mass(c.Load.Mass)}, {"least freeboard", w.Length(c.Rest.Freeboard)}, {"beams over the water", w.Length(c.Beneath)},
		{"GM, and of one hull alone", fmt.Sprintf("%.0f mm, %.0f mm; it ends where a hull lifts", c.GM, c.Single)}}})
	w.add(plotted(figure.PairLevers(c)))
	t := report.Table{Title: "What a beam bears", Columns: []report.Column{text("Case"), figures("N m"), figures("N/mm2"), figures("Sag, " + w.Unit()), figures("Lashing, N"), text("Taken as")}}
	for _, k := range c.Cases {
		sag := "-"
		if k.Sag > 0 {
			sag = w.Cell(k.Sag)
		}
		t.Rows = append(t.Rows, []string{k.Name, fmt.Sprintf("%.0f", k.Moment), fmt.Sprintf("%.1f", k.Stress), sag, fmt.Sprintf("%.0f", k.Lash), k.Why})
	}
	w.add(t)
	w.told(c.Findings, c.Practices)
}

func (w *writer) rowing(f *rowing.Fit) {
	w.section("Rowing")
	w.add(report.Figure{Drawing: roomy(func(wide float64) layout.Drawing { return figure.RowingSketch(f, wide) }),
		Caption: fmt.Sprintf("Rowed by a %s of %.0f mm and %.0f kg, from the side and from astern, not to scale; stations in mm.", f.Row.Body, f.Body.Stature, f.Body.Mass),
		About:   "The boat with a rower on the seat, and the oars from astern."})
	clear, overWater, alone := "-", "-", "-"
	if f.Fault == nil {
		clear, overWater = w.Length(f.OverLegs())+", "+w.Length(f.OverGunwale()), w.Length(f.WaterLock)
		alone = w.Length(f.Rest.Draft) + ", " + w.Length(math.Tan(f.Rest.Trim)*f.Rest.LWL) + ", " + w.Length(f.Rest.Freeboard.Least)
	}
	w.add(report.Table{Title: "Oars and places", Columns: []report.Column{text("Figure"), figures("")}, Rows: [][]string{
		{"between the rowlocks", w.Length(f.Span)}, {"oars, and inboard of the button", w.Length(f.Oar.Length) + ", " + w.Length(f.Oar.Inboard)},
		{"rowlocks at", w.Station(f.LockX)}, {"rowlocks over the seat, over the water", w.Length(f.LockZ-f.SeatZ) + ", " + overWater},
		{"seat's middle at, over the floor", w.Station(f.SeatX) + ", " + w.Length(f.SeatOver)}, {"heels at", w.Station(f.FootX)},
		{"hands over the legs, oar over the gunwale", clear},
		{"rower alone: draught, bow up by, least freeboard", alone},
		{"stress in a bar, asked of the wood", fmt.Sprintf("%.1f, %.1f N/mm2 at %.0f N on each handle", math.Max(f.Strength.Flat, f.Strength.Upright), f.Strength.Working, f.Strength.Pull)}}})
	w.told(f.Findings, f.Ranges)
}
