package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wording"
)

// shape lists what gives the boat its form where no mould does.
func shape(b *bend.Report, units measure.System) []string {
	f := b.Frame
	g, s := &f.Gunwale, f.Hull.Sheer
	spread := "Hold the gunwales apart, middle to middle of their undersides: "
	for i, p := range f.Design.AllSpreaders() {
		x := float64(p.At)
		if i > 0 {
			spread += "; "
		}
		if x == 0 {
			spread += "midship " + units.Fine(float64(p.Beam))
			continue
		}
		spread += fmt.Sprintf("%s (%s along the gunwale) %s", stationOf(units, x), units.Fine(math.Abs(g.Line.Length(x))), units.Fine(float64(p.Beam)))
	}
	out := []string{
		spread + ".",
		fmt.Sprintf("Their lean: %s. Their undersides stand %s above the baseline at midship, %s at the bow, %s at the stern.",
			leaning(g.Tilt), units.Fine(s.MidZ), units.Fine(s.BowZ), units.Fine(s.SternZ)),
	}
	for _, e := range b.Gunwale.EdgeSets {
		out = append(out, edgeSet(b, e, units))
	}
	return out
}

// edgeSet says how much of an end's rise the wood is sprung for, and whether it
// bears it.
func edgeSet(b *bend.Report, e bend.EdgeSet, units measure.System) string {
	words := fmt.Sprintf("The %s's rise holds %s of edge-set, from %s off midship on: the gunwales bent in their tall way to a radius of %.1f m, %.0f %% of what %s carries",
		e.End, units.Fine(e.Rise), units.Fine(e.From), e.Radius()/1000, 100*e.Stress/b.Boat.Wood.MOR, b.Boat.Wood.Name)
	if e.TooTight {
		return words + ". TOO MUCH to spring: laminate or cut them to the sheer."
	}
	return words + fmt.Sprintf(". Springing it in after marking carries the last marks %.1f mm outward.", e.EndShift(b.Frame.Gunwale.Height))
}

// stock lists the sticks to mill, with the tightest bend beside the wood's limit.
func stock(b *bend.Report, units measure.System) []string {
	f := b.Frame
	d := f.Design
	least, most := math.Inf(1), 0.0
	for _, r := range f.Ribs {
		least, most = math.Min(least, r.Blank), math.Max(most, r.Blank)
	}
	stringers := ""
	for i, s := range f.Stringers {
		if i > 0 {
			stringers += ", "
		}
		stringers += units.Fine(s.Fore - s.Aft)
	}
	size := func(a, b float64) string { return units.Fine(a) + " x " + units.Fine(b) }
	out := []string{
		fmt.Sprintf("Gunwales, 2: %s, %s tall, %d plies, %s long.", d.Gunwale.Species, size(f.Gunwale.Width, f.Gunwale.Height), d.Gunwale.Plies, units.Fine(f.Gunwale.Fore-f.Gunwale.Aft)),
		fmt.Sprintf("Ribs, %d: %s, %s thick, blanks from %s to %s.", len(f.Ribs), d.Ribs.Species, size(float64(d.Ribs.Width), float64(d.Ribs.Thickness)), units.Fine(least), units.Fine(most)),
		tightest(b),
		fmt.Sprintf("Keel: %s, %s deep, %s long. Stringers, 2 each: %s, %s deep, %s long from the keel up.", d.Keel.Species, size(float64(d.Keel.Width), float64(d.Keel.Depth)), units.Fine(f.Keel.Fore-f.Keel.Aft),
			d.Stringers.Species, size(float64(d.Stringers.Width), float64(d.Stringers.Depth)), stringers),
		fmt.Sprintf("Stems: %s thick at the bow, %s at the stern. Breasthooks: %s, %s thick. Skin: %s around at midship, %s along the keel and both stems, without allowance.", units.Fine(f.Bow.Thickness), units.Fine(f.Stern.Thickness),
			d.Breasthook.Species, units.Fine(f.BowHook.Thickness), units.Fine(f.Skin.Girth), units.Fine(f.Skin.Length)),
	}
	return out
}

// tightest compares the tightest bend with what the wood takes. The limits are
// from memory and said to be so.
func tightest(b *bend.Report) string {
	tight, wood := b.Frame.Ribs[0], b.Boat.Ribs
	for _, r := range b.Frame.Ribs {
		if r.Tightest < tight.Tightest {
			tight = r
		}
	}
	words := fmt.Sprintf("Tightest bend: rib %s, inside radius %.1f thicknesses. %s, steamed, takes about %.3g without a strap and %.3g with one (from memory: test-bend first).",
		tight.Name, tight.Tightest, wording.Capital(wood.Name), wood.FreeRatio, wood.StrapRatio)
	switch {
	case tight.Tightest < wood.StrapRatio:
		return words + " TOO TIGHT for this wood: make the ribs thinner, the bilge radius larger, or choose another wood."
	case tight.Tightest < wood.FreeRatio:
		return words + " USE A STRAP for it."
	}
	return words
}
