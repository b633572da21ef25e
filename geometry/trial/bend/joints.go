package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/joint"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
)

// newtonUnit is what joints are measured in.
const newtonUnit = "N"

// jointed judges the joints by the loads that the frame puts on them, or by usual ones
// where none is known (joint.Usual): of each kind the one that has least to spare. Where
// fasteners stand nearer an edge than they should, that is told too.
func (r *Report) jointed() {
	j, u := r.Joints, r.Joints.Usual
	along, head := u.EndPull, 0.0 // on a foot, and on the head of an end rib
	if e := r.EdgeSet; e != nil {
		along = math.Max(along, math.Max(e.Free.Thrust, e.Usual.Thrust))
		head = math.Max(e.Free.Pull, e.Usual.Pull) / 2
	}
	var feet, landings, ends, hooks, cross joint.Scarcest
	for i := range 2 {
		f, l, e, h := &j.Feet[i], &j.Landings[i], &j.Ends[i], &j.Hooks[i]
		apart := math.Abs(r.Spread.Ends[i])
		feet.Take("", along, f.Bears)
		landings.Take("", u.EndPull, u.Bears(l.Turns))
		ends.Take("", apart, u.Bears(e.Turns))
		hooks.Take("", apart, h.Bears)
		if i == 0 && r.Frame.Design.EndsAlike() {
			continue
		}
		r.short(f.Name, f.Shortage)
		r.nearEdge(l.Name, l.Edge, l.Wants)
		r.nearEdge(e.Name, e.Edge, e.Wants)
		r.short(h.Name, h.Short)
	}
	r.bears("keel to stem, along the keel", feet, "two more screws, or glue the foot as well")
	r.bears("stringers to stem, a pair pulled off", landings, "thicker cord or more turns")
	r.bears("gunwales to stem, ends springing apart", ends, "thicker cord or more turns")
	r.bears("breasthook to gunwales, pegs alone", hooks, "keep the gunwales' lashing on until the glue is hard: glue holds this joint, pegs only place it")
	r.heads(head)
	if r.EdgeSet != nil {
		r.bears("end rib to keel, holding the edge-set", joint.One(2*head, j.Keel.Bears), "thicker cord or two more turns at the end ribs")
	}
	for i, c := range j.Cross {
		r.crossed(&cross, i)
		if c.Gunwale < c.EdgeWants {
			r.short(c.Name, fmt.Sprintf("a bolt stands %.0f mm from the gunwale's faces, %.0f mm are wanted; give wider gunwales", c.Gunwale, math.Ceil(c.EdgeWants)))
		}
	}
	r.bears("cross pieces to gunwales"+cross.What, cross, "larger washers, or one more bolt at each end")
}

// heads judges the ribs' heads in their mortises.
func (r *Report) heads(set float64) {
	h := &r.Joints.Head
	how, bears := "pegged", h.Bears()
	if h.All() {
		how, bears = "pegged and glued", h.GlueBears
	}
	r.bears("rib heads, "+how+", loaded boat lifted by its gunwales", joint.One(h.Lifted, bears), "a deeper mortise (ribs.mortise_depth)")
	if set > 0 {
		r.bears("heads of the end ribs, glued too, holding the edge-set", joint.One(set, h.GlueBears), "less edge-set")
	}
	r.short("rib to gunwale", h.Shortage)
}

// crossed takes a cross piece: what pushes it or pulls it along itself, and what hangs on
// it.
func (r *Report) crossed(s *joint.Scarcest, i int) {
	u, c := r.Joints.Usual, r.Joints.Cross[i]
	push := u.EndPull
	if i < len(r.AtRest.Struts) {
		push = math.Max(push, math.Abs(r.AtRest.Struts[i]))
	}
	s.Take(", "+c.Piece+" pushed", push, c.Pushes)
	s.Take(", boat carried by "+c.Piece, u.Handling*u.Hull*measure.Gravity/2, c.Pulls)
}

// bears notes whether joints bear their load.
func (r *Report) bears(about string, s joint.Scarcest, cure string) {
	if !s.Any() {
		return
	}
	f := finding.Finding{About: about, Verdict: finding.Holds, Standing: finding.Estimate, Measure: finding.Measure{Value: s.Load, Limit: s.Bears, Unit: newtonUnit, AtMost: true}}
	if !(s.Load <= s.Bears) {
		f.Verdict, f.Cure = finding.Weak, cure
	}
	r.note(f)
}

// nearEdge notes a lashing hole in a stem that stands too near its edge.
func (r *Report) nearEdge(about string, has, wants float64) {
	if has < wants-1e-6 {
		r.short(about, fmt.Sprintf("a lashing hole stands %.0f mm from the stem's edge, %.0f mm are wanted; give more moulded depth", math.Max(0, has), math.Ceil(wants)))
	}
}

// short notes that a fastener stands nearer an edge than it should.
func (r *Report) short(about, what string) {
	if what != "" {
		r.note(finding.Finding{About: about, Text: what, Standing: finding.Common, Verdict: finding.Noted})
	}
}
