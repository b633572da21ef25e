package materials

import (
	"fmt"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// CordToBuy is the cord for all lashings of the frame, a tenth to spare, to the next meter, m.
func CordToBuy(j *joint.Joints) float64 { return upTo(CordSpare*j.Cord()/1000, 1) }

// joints adds what the joints take, and the plywood of stems that are made of it.
func (n *Needs) joints(add func(key, name string, amount float64, unit, how string, args ...any)) {
	j := n.Joints
	add("cord", "lashing cord", CordToBuy(j), "m", "%d crossings, %d lashings at the ends, a tenth to spare", j.Keel.Count+j.Stringers.Count, j.Lashings())
	bolts := "the holes of the cross pieces"
	if len(j.Cross) > 0 {
		bolts += fmt.Sprintf(", washers %.0f mm across", j.Cross[0].Washer) // all lie in one gunwale
	}
	for _, key := range []struct{ key, name, how string }{
		{"peg", "pegs", "one in each rib head, and the breasthooks'"},
		{"screw", "wood screws for the stems' feet, stainless", "keel to stems"},
		{"bolt-5", "bolts M5, each with two washers and a wing nut, stainless", bolts},
	} {
		if count := j.Fasteners(key.key); count > 0 {
			add(key.key, key.name, float64(count), "each", "%s: %s", key.how, wording.List(sizes(j, key.key), size.String))
		}
	}
	if blanks := stemBlanks(j.Frame); len(blanks) > 0 {
		area := 0.0
		for _, b := range blanks {
			area += b.long * b.wide
		}
		add("stem-ply", "plywood for use outdoors, for the stems", upTo(area/1e6, 0.05), "m2", "%s, the longer side along the arrow of the pattern, with room to saw round", wording.List(alike(blanks), blank.String))
	}
}

// size is how many fasteners of one size are bought, mm; a peg's length is its hole's.
type size struct {
	key        string
	count      int
	wide, long float64
}

func (s size) String() string {
	between := " x "
	if s.key == "peg" {
		between = " mm for holes of "
	}
	return fmt.Sprintf("%d of %s%s%s mm", s.count, measure.MM(s.wide, 1), between, measure.MM(s.long, 0))
}

// sizes lists the fasteners with a key of the price table by their size, in the order of
// the joints.
func sizes(j *joint.Joints, key string) []size {
	var out []size
	for _, o := range j.All() {
		f := o.Fastener
		if f.Key != key {
			continue
		}
		i := slices.IndexFunc(out, func(s size) bool { return s.wide == f.Diameter && s.long == f.Length })
		if i < 0 {
			i, out = len(out), append(out, size{key, 0, f.Diameter, f.Length})
		}
		out[i].count += o.Count * f.Each
	}
	return out
}

// blank is so many pieces of plywood alike, long along the grain of their faces, mm.
type blank struct {
	count             int
	thick, long, wide float64
	end               string // of the stem, where the two differ
}

func (b blank) String() string {
	words := fmt.Sprintf("%s of %s mm, %s x %s mm", wording.Counted(b.count, "blank"), measure.MM(b.thick, 0), measure.MM(b.long, 0), measure.MM(b.wide, 0))
	if b.end != "" {
		words += " (" + b.end + ")"
	}
	return words
}

// alike puts blanks of one size together.
func alike(blanks []blank) []blank {
	var out []blank
	for _, b := range blanks {
		i := slices.IndexFunc(out, func(o blank) bool {
			return o.thick == b.thick && o.long == b.long && o.wide == b.wide && o.end == b.end
		})
		if i < 0 {
			out = append(out, b)
			continue
		}
		out[i].count++
	}
	return out
}

// stemGlue is the glue between the layers of stems of plywood, mm2: a stem's layers are all
// of one size.
func stemGlue(f *frame.Frame) (sum float64) {
	for _, s := range []frame.Stem{f.Stern, f.Bow} {
		for i, b := range stemLayers(f, s) {
			if i > 0 {
				sum += b.long * b.wide
			}
		}
	}
	return sum
}

// stemBlanks are the layers that stems of plywood are glued from, one by one, with room to
// saw round each; none where they are not made of it.
func stemBlanks(f *frame.Frame) []blank {
	stern, bow := stemLayers(f, f.Stern), stemLayers(f, f.Bow)
	if !slices.Equal(stern, bow) {
		for i := range stern {
			stern[i].end = f.Stern.End
		}
		for i := range bow {
			bow[i].end = f.Bow.End
		}
	}
	return append(stern, bow...)
}

// stemLayers are those of one stem.
func stemLayers(f *frame.Frame, s frame.Stem) []blank {
	if f.Design.MadeStems() != design.StemsPlywood {
		return nil
	}
	var out []blank
	whole := s.Blank()
	for _, t := range design.Sheets(s.Thickness) {
		out = append(out, blank{count: 1, thick: t, long: whole[0].Length(), wide: whole[1].Length()})
	}
	return out
}
