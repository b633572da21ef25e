package sizing

import (
	"fmt"
	"strings"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wording"
)

// ParsePaddler reads a paddler as people write one: "62 kg, 168 cm, woman,
// span 171 cm, kneeling", in any order. Weight and stature must be there; the
// arm span is estimated when it is left out.
func ParsePaddler(text string) (Paddler, error) {
	p := Paddler{Posture: family.Either}
	if len(text) > 200 {
		return p, fmt.Errorf("%q is too long for a paddler; accepted: \"62 kg, 168 cm\", and perhaps woman or man, span 171 cm, kneeling or sitting", text[:30]+"...")
	}
	for _, part := range strings.Split(text, ",") {
		part = strings.ToLower(strings.TrimSpace(part))
		if err := p.take(part); err != nil {
			if with := parted(strings.Fields(part)); with != "" && with != part {
				err = fmt.Errorf("a comma is missing; write %s", with)
			}
			return p, fmt.Errorf("paddler %q: %w%s", text, err, wording.Decimals(text))
		}
	}
	switch {
	case p.Weight == 0:
		return p, fmt.Errorf("paddler %q has no weight; accepted: one as \"62 kg, 168 cm\"", text)
	case p.Stature == 0:
		return p, fmt.Errorf("paddler %q has no stature; accepted: one as \"62 kg, 168 cm\"", text)
	}
	return p, p.Check()
}

// String writes the paddler as ParsePaddler reads one.
func (p Paddler) String() string {
	out := fmt.Sprintf("%g kg, %g mm", p.Weight, p.Stature)
	if p.Span > 0 {
		out += fmt.Sprintf(", span %g mm", p.Span)
	}
	if p.Sex != body.Untold {
		out += ", " + p.Sex.String()
	}
	if p.Posture != family.Either {
		out += ", " + p.Posture
	}
	return out
}

// parted are words with commas between the parts of a paddler that they are; "" where they
// are no parts.
func parted(words []string) string {
	for i := 1; i <= len(words); i++ {
		one := strings.Join(words[:i], " ")
		if new(Paddler).take(one) != nil {
			continue
		}
		if i == len(words) {
			return one
		}
		if others := parted(words[i:]); others != "" {
			return one + ", " + others
		}
	}
	return ""
}

// take reads one part of a paddler.
func (p *Paddler) take(part string) error {
	switch part {
	case "woman", "female":
		p.Sex = body.Woman
		return nil
	case "man", "male":
		p.Sex = body.Man
		return nil
	case "kneeling", "kneel":
		p.Posture = family.Kneeling
		return nil
	case "sitting", "sit":
		p.Posture = family.Sitting
		return nil
	case family.Either:
		return nil
	case "":
		return fmt.Errorf("nothing stands between two commas; for decimals write 62.5 kg, not 62,5 kg")
	}
	part, span := strings.CutPrefix(part, "span ")
	v, d, err := formula.Quantity(part)
	if err != nil {
		return err
	}
	into := &p.Stature
	switch {
	case d == formula.Mass && !span:
		into = &p.Weight
	case d != formula.Length:
		return fmt.Errorf("%q is %s; accepted: a weight as 62 kg, a stature as 168 cm, an arm span as span 171 cm", part, d)
	case span:
		into = &p.Span
	}
	if *into != 0 {
		return fmt.Errorf("%q comes after another of its kind; for the arm span write span 171 cm", part)
	}
	*into = v
	return nil
}
