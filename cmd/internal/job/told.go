package job

import (
	"errors"
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
)

// afloat sets the boat on the water with all that is aboard, its outfits too.
func (k *facts) afloat(w World, in water.Kind, try func(aboard.Boat, afloat.Options) (*afloat.Report, error)) (*afloat.Report, error) {
	on, err := water.At(in, water.Usual)
	if err != nil {
		return nil, err
	}
	b, err := k.carried()
	if err != nil {
		return nil, err
	}
	fitted, err := k.outfits(w, k.design.Gear)
	if err != nil {
		return nil, err
	}
	if b, err = fitted.PutAboard(b); err != nil {
		return nil, of(k.name, err)
	}
	r, err := try(b, afloat.Options{Water: on, Freeboard: wantFreeboard, Outfits: fitted})
	return r, of(k.name, err)
}

// told says in a line each whether the boat stands, in fresh water with the people and
// gear of its design, and whether its wood bends.
func (k *facts) told(w World) (finding.List, error) {
	bends, err := k.bending()
	if err != nil {
		return nil, err
	}
	r, err := k.afloat(w, water.Fresh, afloat.Stands)
	return toldOf(r, err, bends)
}

// judged is what the trials afloat and of the bends found of a boat.
type judged struct {
	told    finding.List // whether it stands and its wood bends, in a line each
	matters finding.List // of all else that was found: what does not pass, and dangers
}

// judge tries a boat with the people and gear of its design.
func (k *facts) judge(w World, in water.Kind) (t judged, err error) {
	bends, err := k.bending()
	if err != nil {
		return t, err
	}
	r, noRest := k.afloat(w, in, afloat.Run)
	if t.told, err = toldOf(r, noRest, bends); err != nil {
		return t, err
	}
	found := bends.Findings
	if r != nil {
		found = slices.Concat(r.Findings, found)
	}
	for _, f := range found {
		if !f.Verdict.Passes() || f.Verdict.Danger() {
			t.matters = append(t.matters, f)
		}
	}
	return t, nil
}

// toldOf says it of a boat that was tried, or found no rest. Any other error is returned.
func toldOf(r *afloat.Report, noRest error, bends *bend.Report) (finding.List, error) {
	var fault *float.Fault
	switch {
	case errors.As(noRest, &fault):
		return finding.List{afloat.NoRest(fault), bends.InALine()}, nil
	case noRest != nil:
		return nil, noRest
	}
	return finding.List{r.InALine(), bends.InALine()}, nil
}

// warnings are the lines that do not pass.
func warnings(told finding.List) finding.List {
	var out finding.List
	for _, f := range told {
		if !f.Verdict.Passes() {
			out = append(out, f)
		}
	}
	return out
}
