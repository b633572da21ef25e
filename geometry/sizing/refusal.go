package sizing

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
)

// Refused says in the words of the brief why a family that comes with the program makes no
// boat for it, instead of naming a key that nobody set. Other errors stay as they are: of
// the builder's own family, of values set by hand, of a search.
func (c *Case) Refused(err error) error {
	own := !slices.Contains(family.Names(), strings.TrimSuffix(c.Family.Name, ".family"))
	if clash := (*Clash)(nil); err == nil || own || len(c.hand) > 0 || errors.As(err, &clash) {
		return err
	}
	return &Refusal{fmt.Sprintf("no boat of the family %s can be made for %s: %s; check weights and statures, measure the arm span, or take another family",
		strings.TrimSuffix(c.Family.Name, ".family"), c.Brief.Who(), c.hinders(err)), err}
}

// Refusal is why a family makes no boat for a brief.
type Refusal struct {
	Text  string
	cause error // in the words of design and formulas
}

// Error returns the words of the brief.
func (r *Refusal) Error() string { return r.Text }

// Unwrap returns what stopped the formulas or the parts.
func (r *Refusal) Unwrap() error { return r.cause }

// keyed is a key of a design in a text, as ribs.pitch.
var keyed = regexp.MustCompile(`[a-z]\.[a-z]`)

// hinders is what stands in the way of a boat: what the formulas or the water said, where
// that names no key; else what is known as far as the formulas came.
func (c *Case) hinders(err error) string {
	text := ""
	if fault := (*wording.Fault)(nil); errors.As(err, &fault) {
		text = fault.Text
	} else if afloat := (*float.Fault)(nil); errors.As(err, &afloat) {
		text = afloat.Error()
	}
	if text != "" && !keyed.MatchString(text) {
		return text
	}
	number := func(name string) float64 {
		if v, _, ok := c.run.Value(name); ok {
			return v.Num
		}
		return 0
	}
	reach, wide := number("reach"), number("beam_by_load")+number("rail")
	if r := number("partner_reach"); r > 0 {
		reach = min(reach, r)
	}
	load := formula.ShowNumber(number("load"), formula.Mass)
	if reach < 0.9*wide {
		return fmt.Sprintf("arms that reach over %.0f mm of boat do not go with %s all up, which want some %.0f mm", reach, load, wide)
	}
	return load + " all up, so spread, leave its seats no room that a boat of that length has"
}
