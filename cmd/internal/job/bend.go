package job

import (
	"io"
	"strings"

	"ribwright/geometry/boat/aboard"
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
	bends, err := k.bending()
	if err != nil {
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
	trials, err := bends.Boat.Trials(without, b.Miss)
	if err != nil {
		return nil, of(k.name, err)
	}
	carried, err := aboard.New(bends.Frame, k.design.Crew, k.design.Gear)
	if err != nil {
		return nil, of(k.name, err)
	}
	hands, err := k.hands(&carried)
	if err != nil {
		return nil, err
	}
	alone, err := bends.Boat.Alone(without)
	if err != nil {
		return nil, of(k.name, err)
	}
	numbers, err := json.Bend(bends, without, trials, alone, b.Miss)
	if err != nil {
		return nil, of(k.name, err)
	}
	loose, err := k.loose(&carried)
	if err != nil {
		return nil, err
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
