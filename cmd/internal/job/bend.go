package job

import (
	"io"

	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
	"ribwright/layout/figure"
	"ribwright/layout/report/trial"
	"ribwright/render/json"
	"ribwright/render/svg"
)

// Bend asks whether the wood takes each bend, and what holds the frame's shape.
type Bend struct {
	Subject
	Without []string // members that are taken out
	Miss    float64  // mm, by how much every rib misses the neutral set, wider positive
	Picture bool
}

// NewBend returns the request with its defaults.
func NewBend() *Bend { return &Bend{Subject: usual(), Without: []string{"all"}, Miss: usualMiss} }

// Fields lists the choices.
func (b *Bend) Fields() []Field {
	const mostMiss = 100 // beyond it the frame no longer moves in proportion
	return []Field{
		without(&b.Without),
		{Name: "miss", Takes: "length", Says: "by how much every rib misses the neutral set, wider positive", Value: length(&b.Miss, -mostMiss, mostMiss)},
		units(&b.Units, "what lengths are lettered in"),
		picture(&b.Picture, "the plan shape before and after as NAME-bend.svg too"),
	}
}

// bent is a design with every fact that is told of its bends and balance.
type bent struct {
	*facts
	trial.Balance
	alone []balance.Band // of each member that is taken out, when it alone is
}

// Do judges the frame.
func (b *Bend) Do(w World) (*Result, error) {
	k, err := b.work(w)
	if err != nil {
		return nil, err
	}
	return b.tell(k)
}

// work works the facts out.
func (b *Bend) work(w World) (k bent, err error) {
	if k.facts, err = w.factsOf(b.Design); err != nil {
		return k, err
	}
	k.Miss = b.Miss
	err = together(
		func() (err error) { k.Report, err = k.bending(); return err },
		func() error { return b.without(&k) },
		func() (err error) { k.Hands, err = k.hands(); return err },
		func() (err error) { k.Loose, err = k.loose(); return err },
	)
	return k, err
}

// without takes members out of the frame.
func (b *Bend) without(k *bent) error {
	boat, err := k.balance()
	if err != nil {
		return err
	}
	members := b.Without
	if len(members) == 1 && members[0] == "all" {
		members = allOut(boat.Frame)
	}
	if k.Without, err = boat.Choose(members); err != nil {
		return wrong("without", err)
	}
	if k.Trials, err = boat.Trials(k.Without, b.Miss); err != nil {
		return of(k.name, err)
	}
	k.alone, err = boat.Alone(k.Without)
	return of(k.name, err)
}

// tell makes blocks and numbers of the facts.
func (b *Bend) tell(k bent) (*Result, error) {
	numbers, err := json.Bend(k.Report, k.Without, k.Trials, k.alone, b.Miss)
	if err != nil {
		return nil, of(k.name, err)
	}
	out := &Result{Report: k.report("bends and balance", trial.Bending(k.Balance, b.Units)).In(b.Units), Numbers: append(numbers, json.HowTrue(k.Hands, k.Report)...),
		Warnings: warnings(finding.List{k.Report.InALine()})}
	if b.Picture {
		title := k.design.Title
		out.Outputs = []Output{{k.design.Stem() + "-bend.svg", "the plan shape before and after, and the forces", func(to io.Writer) error {
			return svg.EncodeFigure(to, figure.Balance(title, k.Report.Boat, k.Without, k.Trials, b.Miss).Said(b.Units.Words),
				"The gunwales of "+title+" from above, dashed with every cross piece in and solid with some taken out, changes exaggerated, with the force in each cross piece. "+k.titled()+".")
		}}}
	}
	return out, nil
}
