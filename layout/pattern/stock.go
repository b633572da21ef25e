package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
)

// shape lists what gives the boat its form where no mould does.
func shape(f *frame.Frame, o Options) []string {
	g, s := &f.Gunwale, f.Hull.Sheer
	spread := "Hold the gunwales apart, middle to middle of their undersides: "
	for i, p := range f.Design.AllSpreaders() {
		x := float64(p.At)
		if i > 0 {
			spread += "; "
		}
		if x == 0 {
			spread += "midship " + o.plain(float64(p.Beam))
			continue
		}
		spread += fmt.Sprintf("%s (%s along the gunwale) %s", o.at(x), o.plain(math.Abs(g.Line.Length(x))), o.plain(float64(p.Beam)))
	}
	out := []string{
		spread + ".",
		fmt.Sprintf("Their lean: %s. Their undersides stand %s above the baseline at midship, %s at the bow, %s at the stern.",
			leaning(g.Tilt), o.plain(s.MidZ), o.plain(s.BowZ), o.plain(s.SternZ)),
	}
	for _, e := range []struct {
		end string
		set hull.EdgeSet
	}{{"bow", s.BowSet}, {"stern", s.SternSet}} {
		if e.set.Rise > 0 {
			out = append(out, edgeSet(f, o, e.end, e.set))
		}
	}
	return out
}

// edgeSet says how much of an end's rise the wood is sprung for, and whether it
// bears it. Half the breaking stress is a common limit for parts bent dry; common
// practice, no source.
func edgeSet(f *frame.Frame, o Options, end string, e hull.EdgeSet) string {
	words := fmt.Sprintf("The %s's rise holds %s of edge-set, from %s off midship on: the gunwales bent in their tall way to a radius of %.1f m", end, o.plain(e.Rise), o.plain(e.From), e.Radius()/1000)
	wood, err := f.Design.Wood(f.Design.Gunwale.Species)
	if err != nil {
		return words + "."
	}
	share := e.Strain(f.Gunwale.Height) * wood.MOE / wood.MOR
	words += fmt.Sprintf(", %.0f %% of what %s carries", 100*share, wood.Name)
	if share > timber.AssemblyShare {
		return words + ". TOO MUCH to spring: laminate or cut them to the sheer."
	}
	return words + fmt.Sprintf(". Springing it in after marking carries the last marks %.1f mm outward.", e.EndShift(f.Gunwale.Height))
}

// stock lists the sticks to mill, with the tightest bend beside the wood's limit.
func stock(f *frame.Frame, o Options) []string {
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
		stringers += o.plain(s.Fore - s.Aft)
	}
	size := func(a, b float64) string { return o.plain(a) + " x " + o.plain(b) }
	out := []string{
		fmt.Sprintf("Gunwales, 2: %s, %s tall, %d plies, %s long.", d.Gunwale.Species, size(f.Gunwale.Width, f.Gunwale.Height), d.Gunwale.Plies, o.plain(f.Gunwale.Fore-f.Gunwale.Aft)),
		fmt.Sprintf("Ribs, %d: %s, %s thick, blanks from %s to %s.", len(f.Ribs), d.Ribs.Species, size(float64(d.Ribs.Width), float64(d.Ribs.Thickness)), o.plain(least), o.plain(most)),
		tightest(f),
		fmt.Sprintf("Keel: %s, %s deep, %s long. Stringers, 2 each: %s, %s deep, %s long from the keel up.", d.Keel.Species, size(float64(d.Keel.Width), float64(d.Keel.Depth)), o.plain(f.Keel.Fore-f.Keel.Aft),
			d.Stringers.Species, size(float64(d.Stringers.Width), float64(d.Stringers.Depth)), stringers),
		fmt.Sprintf("Stems: %s thick at the bow, %s at the stern. Breasthooks: %s, %s thick. Skin: %s around at midship, %s along the keel and both stems, without allowance.", o.plain(f.Bow.Thickness), o.plain(f.Stern.Thickness),
			d.Breasthook.Species, o.plain(f.BowHook.Thickness), o.plain(f.Skin.Girth), o.plain(f.Skin.Length)),
	}
	return out
}

// tightest compares the tightest bend with what the wood takes. The limits are
// from memory and said to be so.
func tightest(f *frame.Frame) string {
	tight := f.Ribs[0]
	for _, r := range f.Ribs {
		if r.Tightest < tight.Tightest {
			tight = r
		}
	}
	words := fmt.Sprintf("Tightest bend: rib %s, inside radius %.1f thicknesses.", tight.Name, tight.Tightest)
	wood, err := f.Design.Wood(f.Design.Ribs.Species)
	if err != nil {
		return words
	}
	words += fmt.Sprintf(" %s, steamed, takes about %.3g without a strap and %.3g with one (from memory: test-bend first).", wording.Capital(wood.Name), wood.FreeRatio, wood.StrapRatio)
	switch {
	case tight.Tightest < wood.StrapRatio:
		return words + " TOO TIGHT for this wood: make the ribs thinner, the bilge radius larger, or choose another wood."
	case tight.Tightest < wood.FreeRatio:
		return words + " USE A STRAP for it."
	}
	return words
}
