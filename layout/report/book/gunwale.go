package book

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

func (w *writer) mortises() {
	f, d := w.Frame, w.Frame.Design
	g := &f.Gunwale
	w.chapter("Gunwales")
	glue := ""
	if n := d.Gunwale.Plies; n > 1 {
		glue = fmt.Sprintf(", %d plies of %s glued", n, w.Fine(g.Width/float64(n)))
		switch d.Gunwale.Glued {
		case "bent":
			glue += " while the spreaders hold them to the finished curve"
		case "form":
			glue += " on a form"
		default:
			glue += " straight"
		}
	}
	w.say("Two, mirrored: %s, %s wide and %s tall%s. Each is %s long on the %s along the middle of its underside, from %s aft to %s forward of midship, and leans %s degrees outward.",
		d.Gunwale.Species, w.Fine(g.Width), w.Fine(g.Height), glue, w.Fine(g.Fore-g.Aft), w.gunwaleStock(), w.Fine(-g.Aft), w.Fine(g.Fore), report.Angle(g.Tilt))
	w.say("The ends are cut across the underside %s degrees off square forward and %s aft, the inboard edge the longer one, so that in the boat each end stands square across and plumb against its stem's horn. %s%s", report.Angle(g.ForeCut), report.Angle(g.AftCut), w.reachOn(), w.edgeSets())
	w.sheerToSaw()
	m0 := g.Mortises[0]
	if g.Blocks != nil {
		w.gaps()
		w.holding()
		w.scarfs()
		return
	}
	w.say("Every mortise is %s long, %s wide and %s deep, in the underside, in the middle of its width; a wall of %s stands on either side at the mouth. %sPlaces are lengths along the %s from midship, forward positive: mark them before anything is bent, on the dry plies where they are glued bent, each from midship and not from its neighbor.",
		w.Fine(m0.Length), w.Fine(m0.Width), w.Fine(m0.Depth), w.Fine(m0.Wall), w.walls(), w.gunwaleStock())
	t := report.Titled("Mortises, "+w.Marks()).Names("Rib").Numbers("From midship, along the stock", "Station, along the boat", "Lean, degrees", "Along, degrees", "Twist, degrees", "Ease", "Wood to the next", "Thinner wall, at the bottom")
	if len(g.Scarfs) > 0 {
		t = t.Numbers("To a scarf drawn")
	}
	for _, m := range g.Mortises {
		t.Row(m.Rib, w.Mark(m.FromMidship), w.Cell(m.Station), signed(report.Angle(m.Bevel)), signed(report.Angle(m.Along)), turned(m.Twist), w.cellIf(w.eased(m), m.Ease), w.Cell(m.ToNext), w.Gauge(m.Deep))
		if len(g.Scarfs) > 0 {
			last := len(t.Rows) - 1
			t.Rows[last] = append(t.Rows[last], w.cellIf(!math.IsInf(m.ToScarf, 1), m.ToScarf))
		}
	}
	t.Note = "Lean: the bottom of the slot goes outboard (+) or inboard (-) by this angle off the gunwale's own square. " + headNote
	w.add(t)
	w.holding()
	w.scarfs()
}

// reachOn says how the cut at a gunwale's end slopes up its side, "" where it stands square.
func (w *writer) reachOn() string {
	g := &w.Frame.Gunwale
	fore, aft := w.Fine(g.ForeRise), w.Fine(g.AftRise)
	switch {
	case math.Max(g.ForeRise, g.AftRise) < 0.05:
		return "Up the sides the cut is square to the underside. "
	case fore == aft:
		return "Up the sides it slopes: at the upper face the cut lies " + fore + " farther out than on the underside. "
	}
	return "Up the sides it slopes: at the upper face the cut lies farther out than on the underside, by " + fore + " forward and " + aft + " aft. "
}

// walls says how a mortise's lean thins its wall.
func (w *writer) walls() string {
	m := slices.MinFunc(w.Frame.Gunwale.Mortises, func(a, b frame.Mortise) int { return cmp.Compare(a.Deep, b.Deep) })
	if m.Wall-m.Deep < 0.1 {
		return ""
	}
	return fmt.Sprintf("A slot that leans comes nearer to one face the deeper it goes: at its bottom, %s from the underside, the thinner of its two walls is %s at mortise %s, the thinnest of all. What joinery texts ask for, under What the wood is asked for, is for the mouth; about half of it does at the bottom, which has whole wood over it. ", w.Fine(m.Depth), w.Fine(m.Deep), m.Rib)
}

// headNote explains the columns that tell how a head lies in its slot.
const headNote = "Along: the rib's head leans forward (+) or aft (-) in its slot, which is cut square along the stock. Twist: the rib's last hand's breadth is wrung by so much to lie along the slot, its forward edge outboard (+) or inboard (-). Ease: plane so much off the tip of the head, on its forward edge where it leans forward, on its after edge where it leans aft, running out to nothing at the shoulder line; a blank is a head that goes in as it is."

// turned letters a twist to the whole degree, for no hand wrings a rib finer.
func turned(a float64) string { return report.Signed(a * 180 / math.Pi) }

// eased reports whether a head wants more easing than a shaving.
func (w *writer) eased(m frame.Mortise) bool { return m.Ease >= 0.1 }

// edgeSets says what is made and what is sprung in beyond the natural sheer.
func (w *writer) edgeSets() string {
	words := ""
	for _, e := range []struct {
		end string
		set hull.EdgeSet
	}{{"bow", w.Frame.Hull.Sheer.BowSet}, {"stern", w.Frame.Hull.Sheer.SternSet}} {
		if e.set.Made > 0 {
			words += fmt.Sprintf("At the %s %s of the rise is sawn or laminated into the stock, from %s off midship on. ", e.end, w.Fine(e.set.Made), w.Length(e.set.From))
		}
		if e.set.Sprung() > 0 {
			words += fmt.Sprintf("At the %s the stock is sprung edgewise by %s from %s off midship on, to a radius of %s m. ", e.end, w.Fine(e.set.Sprung()), w.Length(e.set.From), measure.MM(e.set.Radius()/1000, 1))
		}
	}
	return words
}
