package cargo

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
)

// Findings say what to make of it.
func (r *Report) Findings() (out finding.List) {
	if r == nil {
		return nil
	}
	who := fmt.Sprintf("%s (%.0f kg)", wording.List(r.Who, wording.OneLine), r.Mass)
	lean, side := r.Moves[0], r.Moves[1]
	switch {
	case lean.Upset:
		out.Judge(finding.Unsafe, "live cargo", finding.Arithmetic, "%s upsets the boat by leaning %.0f mm aside while the paddlers sit still; the most that it holds is %.0f mm. Carry less, or seat all lower", who, lean.By, r.Held)
	case side.Upset:
		against := "nobody paddles who could lean the other way"
		if side.Against > 0 {
			against = fmt.Sprintf("the paddlers must move their weight %.0f mm the other way to hold it", side.Against)
		}
		out.Warn("live cargo", finding.Arithmetic, "%s at one side as far as the gunwale lets it, %.0f mm off the middle line, upsets the boat while the paddlers sit still; %s. Lying low it is held up to %.0f mm off the middle. Live cargo stays low in the middle, and learns that ashore", who, side.By, against, r.Held)
	default:
		out.Say("live cargo", finding.Arithmetic, "%s at one side as far as the gunwale lets it, %.0f mm off the middle line, heels the boat %.0f deg and leaves %.0f mm of freeboard and %.0f mm of righting lever", who, side.By, side.Heel*180/math.Pi, side.Freeboard, side.Lever)
	}
	for _, m := range r.Moves[2:] {
		if m.Upset {
			out.Warn("live cargo", finding.Arithmetic, "%s that %s by %.0f mm upsets the boat", who, m.What, m.By)
		}
	}
	return out
}
