package cutlist

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/finding"
)

// Heat is what is steamed of each stringer before it is bent in, by its number: stretches
// along the straight stock from midship, mm.
type Heat map[int][]frame.Zone

// Make plans the sawing of a frame and its outfits from the boards that its design names,
// or from sizes to ask the yard for, with scarfs out of what is steamed. With no heat
// nothing is known to be steamed but the ribs.
//
// How: each wood is ripped first and the rips are crosscut, both by Pack; the end left of a
// wide rip is ripped once more where that saves a board. Long sticks are scarfed where the
// boards are short. Of several orders of using up the builder's boards, and of the yard's
// sizes, the one that leaves no stick without wood and costs least is taken: by price where
// all prices are known, else by volume.
func (h Heat) Make(f *frame.Frame, kits ...kit.Kit) *Plan { return h.plan(f, kits, Pack, searched) }

// searched is how many of the yard's sizes, the best by first-fit, are searched in full.
const searched = 4

// Quick plans like Make, but lays each stick on the first board with room and looks for
// nothing better: in a fraction of the time, with a board more here and there. It is for
// comparing two boats.
func (h Heat) Quick(f *frame.Frame, kits ...kit.Kit) *Plan { return h.plan(f, kits, firstFitOnly, 1) }

// bag is how far the bag that holds the steam reaches past a bend, mm. Our own choice.
const bag = 100.0

// heated is what grows hot of a run: from the innermost bend of each half out to its end,
// for the end hangs loose until the bend is made, and may be steamed whole.
func (r *Run) heated() []frame.Zone {
	aft, fore := math.Inf(-1), math.Inf(1)
	var out []frame.Zone
	for _, z := range r.Heat {
		out = append(out, frame.Zone{From: z.From - bag, To: z.To + bag})
		switch {
		case z.To <= 0:
			aft = math.Max(aft, z.To+bag)
		case z.From >= 0:
			fore = math.Min(fore, z.From-bag)
		}
	}
	if !math.IsInf(aft, 0) {
		out = append(out, frame.Zone{From: r.Aft, To: aft})
	}
	if !math.IsInf(fore, 0) {
		out = append(out, frame.Zone{From: fore, To: r.Fore})
	}
	return frame.Merged(out)
}

// cool are those parts of rooms for scarfs that stay cool.
func (r *Run) cool(rooms []frame.Zone) []frame.Zone {
	out := rooms
	for _, hot := range r.heated() {
		var left []frame.Zone
		for _, z := range out {
			for _, part := range []frame.Zone{{From: z.From, To: math.Min(z.To, hot.From)}, {From: math.Max(z.From, hot.To), To: z.To}} {
				if part.To-part.From >= r.Scarf {
					left = append(left, part)
				}
			}
		}
		out = left
	}
	return out
}

// Heated finds the scarfs that could not be kept out of what is steamed, one finding for
// each stick.
func (p *Plan) Heated() (out finding.List) {
	for i, s := range p.Sticks {
		if s.Run == nil {
			continue
		}
		hot := s.Run.heated()
		for _, j := range p.Cuttings[i].Joints {
			if !overlaps(hot, j) {
				continue
			}
			out = append(out, finding.Finding{About: "scarf of " + s.Mark, Verdict: finding.Missed, Standing: finding.Common,
				Text: fmt.Sprintf("%s has a scarf in a length that is steamed, and heat opens most glues", s.Part),
				Cure: fmt.Sprintf("a board of %.0f mm makes it in one piece; or take a glue that its maker says stands boiling water, as resorcinol", math.Ceil((s.Length+2*Checked)/10)*10)})
			break
		}
	}
	return out
}

func overlaps(zones []frame.Zone, j Joint) bool {
	for _, z := range zones {
		if math.Min(z.To, j.Middle+j.Length/2)-math.Max(z.From, j.Middle-j.Length/2) > 1e-6 {
			return true
		}
	}
	return false
}
