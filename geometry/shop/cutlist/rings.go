package cutlist

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
)

// Faces is how the growth rings lie to the wide faces of a board or of a stick.
type Faces string

// The ways that rings lie.
const (
	FlatFaces    Faces = "flat"    // along the wide faces: flat-sawn, or back-sawn
	QuarterFaces Faces = "quarter" // upright to them: quarter-sawn
)

// turned is how rings lie to the other faces.
func (f Faces) turned() Faces {
	switch f {
	case FlatFaces:
		return QuarterFaces
	case QuarterFaces:
		return FlatFaces
	}
	return ""
}

// Lie is how a stick lies in its board.
type Lie struct {
	Found  bool
	OnEdge bool  // its wide faces are the cuts of the rip, square to the board's face
	Faces  Faces // how its rings lie; "" when it is not known of the board
}

// square is by how much a section's sides may differ and no face is the wide one, mm.
const square = 0.5

// onEdge reports whether a stick in a rip of the given width stands on its edge.
func (s Stick) onEdge(across float64) bool {
	return s.Width-s.Thickness > square && math.Abs(across-s.Thickness) < 1e-9
}

// faces is how the rings of a stick lie that takes up so much of the board's width.
func (b Board) faces(s Stick, across float64) Faces {
	if s.onEdge(across) {
		return b.Sawn.turned()
	}
	return b.Sawn
}

// lying calls see with every stick of the boards and how it lies.
func (t sawing) lying(boards []Sawn, see func(stick int, lie Lie)) {
	var walk func(b Board, rips []RipCut)
	walk = func(b Board, rips []RipCut) {
		for _, r := range rips {
			for _, l := range r.Layers {
				for _, p := range l {
					s := t.sticks[p.Stick]
					see(p.Stick, Lie{true, s.onEdge(r.Across), b.faces(s, r.Across)})
				}
			}
			walk(b, r.Rest)
		}
	}
	for _, b := range boards {
		walk(b.Board, b.Rips)
	}
}

// ways are whether to lay sticks as their rings should lie: both where boards tell how
// they are sawn and sticks mind, else only as it saves wood.
func (t sawing) ways(boards []Board) []bool {
	told, minded := false, false
	for _, b := range boards {
		told = told || b.Sawn != ""
	}
	for _, i := range t.mine {
		minded = minded || t.sticks[i].Wants != ""
	}
	if told && minded {
		return []bool{false, true}
	}
	return []bool{false}
}

// astray counts sticks whose rings lie the wrong way.
func (t sawing) astray(boards []Sawn) int {
	n := 0
	t.lying(boards, func(i int, l Lie) {
		if want := t.sticks[i].Wants; want != "" && l.Faces == want.turned() {
			n++
		}
	})
	return n
}

// askFor says how boards to ask the yard for should be sawn: so that the most sticks
// that mind have their rings as they should. It costs nothing to ask.
func (t sawing) askFor(r *result) {
	flat, quarter := 0, 0
	t.lying(r.Boards, func(i int, l Lie) {
		switch want := t.sticks[i].Wants; {
		case want == "":
		case l.OnEdge == (want == QuarterFaces):
			flat++
		default:
			quarter++
		}
	})
	sawn := Faces("")
	switch {
	case flat+quarter == 0:
		return
	case flat >= quarter:
		sawn = FlatFaces
	default:
		sawn = QuarterFaces
	}
	for i := range r.Boards {
		r.Boards[i].Board.Sawn = sawn
	}
}

// lies notes how each stick lies; of one in pieces, how the first does that is found.
func (p *Plan) lies() {
	p.Lies = make([]Lie, len(p.Sticks))
	t := sawing{sticks: p.Sticks}
	for _, w := range p.Woods {
		t.lying(w.Boards, func(i int, l Lie) {
			if !p.Lies[i].Found {
				p.Lies[i] = l
			}
		})
	}
}

// Grain says how the grain of a stick runs, and where its rings matter, how they lie by
// this plan.
func (p *Plan) Grain(i int) string {
	s, l := p.Sticks[i], p.Lies[i]
	switch {
	case s.Wants == "":
		return s.Grain
	case l.Faces == s.Wants, !l.Found:
		return s.Grain + "; rings " + rings(s.Wants)
	case l.Faces != "":
		return s.Grain + "; rings come out " + rings(l.Faces) + ", wanted " + rings(s.Wants)
	case l.OnEdge:
		return s.Grain + "; rings " + rings(s.Wants) + " if the board is " + string(s.Wants.turned()) + "-sawn"
	}
	return s.Grain + "; rings " + rings(s.Wants) + " if the board is " + string(s.Wants) + "-sawn"
}

func rings(f Faces) string {
	if f == QuarterFaces {
		return "upright"
	}
	return "flat"
}

// Rings finds the sticks whose rings do not lie as they should, or may not: ribs and
// bent plies want them flat to the bend, so that no ray wrinkles inside it.
//
// Source: the bulletin of State Forests of New South Wales on bending prefers back-sawn
// faces; else common practice. Which side of the tree is out makes no odds (P. Koch, of
// southern pine).
func (p *Plan) Rings() finding.List {
	var out finding.List
	for _, family := range []Family{Rib, Stem} {
		var wrong, unknown []int
		all := 0
		for i, s := range p.Sticks {
			if s.Family != family || s.Wants == "" || !p.Lies[i].Found {
				continue
			}
			all++
			switch p.Lies[i].Faces {
			case s.Wants:
			case "":
				unknown = append(unknown, i)
			default:
				wrong = append(wrong, i)
			}
		}
		if len(wrong) > 0 {
			out = append(out, p.astray(family, wrong, all))
		}
		if len(unknown) > 0 {
			out = append(out, p.notTold(family, unknown, all))
		}
	}
	return out
}

func (p *Plan) astray(family Family, wrong []int, all int) finding.Finding {
	cure, l := "a thicker board is resawn flat for them", p.Lies[wrong[0]]
	if l.OnEdge {
		cure = "a quarter-sawn board gives them on edge; or a thicker flat-sawn one, resawn flat"
	} else if l.Faces == QuarterFaces {
		cure = "a flat-sawn board gives them flat; or a quarter-sawn one that is thick enough to slice them off its edge"
	}
	return finding.Finding{About: "rings of " + string(family) + " stock", Verdict: finding.Missed, Standing: finding.Common,
		Text: fmt.Sprintf("%d of %d sticks come out with rings upright to their wide faces, and flat is wanted where wood is bent, or rays may wrinkle inside the bend", len(wrong), all),
		Cure: cure}
}

func (p *Plan) notTold(family Family, unknown []int, all int) finding.Finding {
	edge := 0
	for _, i := range unknown {
		if p.Lies[i].OnEdge {
			edge++
		}
	}
	need := "flat-sawn"
	switch {
	case edge == len(unknown):
		need = "quarter-sawn, for they are sliced off its edge"
	case edge > 0:
		need = fmt.Sprintf("quarter-sawn for the %s that are sliced off its edge, and flat-sawn for the others", wording.Counted(edge, "stick"))
	}
	return finding.Finding{About: "rings of " + string(family) + " stock", Verdict: finding.Noted, Standing: finding.Common,
		Text: fmt.Sprintf("%d of %d sticks have their rings flat to the bend, as is wanted, only if their board is %s", len(unknown), all, need),
		Cure: `look at the board's end, and say in the design how it is sawn (sawn = "flat" or "quarter")`}
}
