package job

import (
	"io"
	"strings"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
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
		{Name: "without", Takes: "members", Says: "members to take out: seat, yoke, thwart, thwart-2, a name, a rib as F3", Value: bind(&b.Without,
			func(s string) ([]string, error) { return strings.Split(s, ","), nil }, func(v []string) string { return strings.Join(v, ",") })},
		{Name: "miss", Takes: "length", Says: "by how much every rib misses the neutral set, wider positive", Value: length(&b.Miss, -mostMiss, mostMiss)},
		units(&b.Units, "what lengths are lettered in"),
		picture(&b.Picture, "the plan shape before and after as NAME-bend.svg too"),
	}
}

// Do judges the frame.
func (b *Bend) Do(w World) (*Result, error) {
	k, err := w.factsOf(b.Design)
	if err != nil {
		return nil, err
	}
	var bends *bend.Report
	var carried aboard.Boat
	if err := together(
		func() (err error) { bends, err = k.bending(); return err },
		func() (err error) { carried, err = k.carried(); return err },
	); err != nil {
		return nil, err
	}
	members := b.Without
	if len(members) == 1 && members[0] == "all" {
		members = allOut(bends.Frame)
	}
	without, err := bends.Boat.Choose(members)
	if err != nil {
		return nil, wrong("without", err)
	}
	var trials []balance.Trial
	var alone []balance.Band
	var hands *handwork.Report
	var loose *afloat.Loose
	if err := together(
		func() (err error) { hands, err = k.hands(&carried); return err },
		func() (err error) { loose, err = k.loose(&carried); return err },
		func() (err error) { trials, err = bends.Boat.Trials(without, b.Miss); return of(k.name, err) },
		func() (err error) { alone, err = bends.Boat.Alone(without); return of(k.name, err) },
	); err != nil {
		return nil, err
	}
	numbers, err := json.Bend(bends, without, trials, alone, b.Miss)
	if err != nil {
		return nil, of(k.name, err)
	}
	told := trial.Balance{Report: bends, Without: without, Trials: trials, Loose: loose, Miss: b.Miss, Hands: hands}
	out := &Result{Report: k.report("bends and balance", trial.Bending(told, b.Units)), Numbers: append(numbers, json.HowTrue(hands, bends)...)}
	if b.Picture {
		title := k.design.Title
		out.Outputs = []Output{{k.design.Slug() + "-bend.svg", "the plan shape before and after, and the forces", func(to io.Writer) error {
			return svg.EncodeFigure(to, figure.Balance(title, bends.Boat, without, trials, b.Miss),
				"The gunwales of "+title+" from above, dashed with every cross piece in and solid with some taken out, changes exaggerated, with the force in each cross piece.")
		}}}
	}
	return out, nil
}
