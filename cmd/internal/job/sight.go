package job

import (
	"fmt"
	"slices"

	"ribwright/geometry/trial/flaw"
	"ribwright/layout/lines"
	"ribwright/layout/report"
	"ribwright/render/json"
)

// Sight asks for what an eye sees of a frame with one fault, beside the fair one. Only a
// page asks for it.
type Sight struct {
	Look
	Fault flaw.Kind
	Size  float64 // mm, 0 for fair
	Stand flaw.Stand
}

// NewSight returns the request with its defaults.
func NewSight() *Sight { return &Sight{Look: *NewLook(), Size: 12} }

// Fields lists the choices.
func (s *Sight) Fields() []Field {
	of := slices.DeleteFunc(s.Look.Fields(), func(f Field) bool {
		return slices.Contains([]string{"turn", "rise", "whole", "water", "rig", "area"}, f.Name)
	})
	return append(of,
		Field{Name: "fault", Takes: "proud|side|wavy", Says: "what is wrong with the frame: a rib that bulges, one with one side full, a keel in waves",
			Value: oneOf(&s.Fault, []string{"proud", "side", "wavy"}, []flaw.Kind{flaw.Proud, flaw.OneSide, flaw.Wavy})},
		Field{Name: "size", Takes: "length", Says: "the most that anything stands off", Value: length(&s.Size, 0, mostFault)},
		Field{Name: "stand", Takes: "bow|stern|abeam", Says: "where the eye is", Value: oneOf(&s.Stand, namesOf(flaw.Stands()), flaw.Stands())})
}

// mostFault is the largest fault that is shown, mm: nobody needs to look twice at more.
const mostFault = 40.0

// Do looks at the frame.
func (s *Sight) Do(w World) (*Result, error) {
	_, k, err := s.opened(w)
	if err != nil {
		return nil, err
	}
	f, err := k.frame()
	if err != nil {
		return nil, err
	}
	seen, err := flaw.See(f, s.Fault, s.Size, s.Stand)
	if err != nil {
		return nil, of(k.name, err)
	}
	size, rib := report.Letters{Units: s.Units}.Length(s.Size), f.Ribs[seen.Fault.Rib].Name
	says := map[flaw.Kind]string{
		flaw.Proud:   fmt.Sprintf("Rib %s stands %s proud at both bilges. Look along the batten in bold: fair, it runs in one sweep.", rib, size),
		flaw.OneSide: fmt.Sprintf("Rib %s, in bold, is %s full to port and as much flat to starboard. Fair, both of its gaps to the next rib are alike.", rib, size),
		flaw.Wavy:    fmt.Sprintf("The keel, in bold, lies high and low by %s in turn. Fair, its edges are straight amidships and rise in one sweep.", size),
	}[s.Fault]
	numbers, err := json.Sight(k.design, says, lines.Fault(f, seen, s.Stand))
	return &Result{Report: k.report("by eye", nil), Numbers: numbers}, of(k.name, err)
}
