package job

import (
	"cmp"
	"slices"

	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/advice"
	"ribwright/geometry/sizing/family"
	"ribwright/layout/report"
	"ribwright/layout/report/reasons"
	"ribwright/render/json"
)

// advise sizes a boat by each family that takes the people, and for a beginner the smallest
// for the lightest of them alone, and ranks them.
func (s *Size) advise(w World) (*Result, error) {
	prices, err := w.prices("mixed")
	if err != nil {
		return nil, err
	}
	beginner := s.Builder == hours.Beginner
	var all []advice.Boat
	for _, name := range family.Names() {
		fam, err := family.Shipped(name)
		if err != nil {
			return nil, err
		}
		crew, first := s.Crew, name == family.Names()[0]
		switch {
		case fam.Seats == len(s.Crew):
		case beginner && first && len(s.Crew) > 1:
			crew = []sizing.Paddler{slices.MinFunc(s.Crew, func(a, b sizing.Paddler) int { return cmp.Compare(a.Weight, b.Weight) })}
		default:
			continue
		}
		one := *s
		one.Crew, one.Use, one.Family, one.Title = crew, name, "", ""
		if len(crew) < len(s.Crew) {
			one.Gear = 0
		}
		b := advice.Boat{Family: name, First: first, People: len(crew), AtHand: s.LongestStick, Car: s.Car, Unsuited: advice.Suits(name, s.Waters, one.Gear)}
		if err := one.advised(fam, w, prices, &b); err != nil {
			b.NoBoat = err.Error()
		}
		all = append(all, b)
	}
	if len(all) == 0 {
		return nil, misuse("paddler", "no family that comes with the program seats %d; accepted: one or two who paddle", len(s.Crew))
	}
	all = advice.Rank(all, beginner)
	brief := s.brief()
	return &Result{
		Report:  report.Report{Title: "Which boat first", For: brief.Who(), Blocks: append(reasons.Advice(all, report.Letters{Units: s.Units}, beginner), report.Paragraph{Words: report.Promise})}.In(s.Units),
		Numbers: json.Advice(all),
	}, nil
}

// advised sizes and tries one of them. Its errors say why there is no boat.
func (s *Size) advised(fam *family.Family, w World, prices *cost.Table, b *advice.Boat) error {
	c, err := s.newCase(fam)
	if err != nil {
		return err
	}
	boat, _, err := s.boat(c)
	if err != nil {
		return err
	}
	k, err := s.factsOf(boat)
	if err != nil {
		return err
	}
	found, err := k.judge(w, s.Water)
	if err != nil {
		return err
	}
	is, _, err := k.behavior(w, prices, s.Builder)
	if err != nil {
		return err
	}
	h := boat.Design.Hull
	b.For, b.Length, b.Beam = boat.Design.For, float64(h.Length), float64(h.Beam)
	b.Mass, b.Hours, b.Cost, b.Lever = is.Mass, is.Hours, is.Cost, boat.Standing.Most
	g := is.Bend.Frame.Gunwale
	b.Stick, b.Scarfs = g.Fore-g.Aft, len(boat.Design.Gunwale.Scarfs)
	b.Missed = append(boat.Failures(), warnings(found.told)...)
	b.Take(is.Bend.Findings, found.matters)
	return nil
}
