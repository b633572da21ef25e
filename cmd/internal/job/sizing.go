package job

import (
	"fmt"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water"
)

// Sizing is what a boat is sized for.
type Sizing struct {
	sizing.Brief        // but its builder's skill and its water, which follow
	Use          string // a family that comes with the program
	Family       string // the name of a family file instead of Use, "" for none
	Water        water.Kind
	Builder      hours.Skill
	Loft         bool // patterns too
	busy         bool // every core has a boat to make
	quick        bool // lay their parts once: a close nest is worth waiting for with one boat, and not with a class
	Units        measure.System
	Printer
}

func newSizing() Sizing {
	return Sizing{Brief: sizing.DefaultBrief(), Use: family.Names()[0], Printer: homePrinter()}
}

// boatGroup is the heading of what a boat is sized for.
const boatGroup = "What the boat is for"

func (s *Sizing) fields() []Field {
	speed := func(text string) (float64, error) {
		return parseQuantity(text, formula.Speed, sizing.SlowestSpeed, sizing.FastestSpeed, "5 km/h")
	}
	return grouped(boatGroup, []Field{
		{Name: "gear", Takes: "weight", Says: "all that is carried besides the people", Value: massOf(&s.Gear, 0, sizing.MostGear, "10 kg or 22 lb")},
		{Name: "use", Takes: strings.Join(family.Names(), "|"), Says: "family of boats", Value: words(&s.Use)},
		{Name: "family", Takes: "FILE.family", Says: "a family of your own instead", Value: words(&s.Family)},
		{Name: "waters", Takes: strings.Join(family.Waters(), "|"), Says: "where it is paddled", Value: oneOf(&s.Waters, family.Waters(), family.Waters())},
		kindOfWater(&s.Water),
		skill(&s.Builder),
		{Name: "longest-stick", Takes: "length", Says: "longest sticks at hand; longer parts are scarfed", Value: length(&s.LongestStick, sizing.ShortestSticks, sizing.LongestSticks)},
		{Name: "wood", Takes: "species", Says: "wood of gunwales, keel and stringers", Value: words(&s.Wood)},
		{Name: "rib-wood", Takes: "species", Says: "wood of the ribs", Value: words(&s.RibWood)},
		{Name: "speed", Takes: "speed", Says: "at which the effort is compared", Value: bind(&s.Speed, speed, showSpeed)},
	})
}

func showSpeed(v float64) string { return fmt.Sprintf("%.6g km/h", v*3600/1e6) }

// printing are the fields of the patterns that may be made too.
func (s *Sizing) printing() []Field {
	return append([]Field{
		{Name: "loft", Says: "full-size patterns and one file for the cutter too", Value: yes(&s.Loft)},
		units(&s.Units, "what is told in, here, in the design's notes and on the patterns"),
	}, s.Printer.fields()...)
}

// brief is the brief with the builder and the water.
func (s *Sizing) brief() sizing.Brief {
	b := s.Brief
	b.Skill, b.Density, b.Units = s.Builder.String(), water.Density(s.Water, water.Usual), s.Units
	return b
}

// family reads the family that is asked for.
func (s *Sizing) family(w World) (*family.Family, error) {
	if s.Family == "" {
		f, err := family.Shipped(s.Use)
		return f, wrong("use", err)
	}
	text, err := w.Files.read(s.Family, "family file", "begin one from a family that comes with the program")
	if err != nil {
		return nil, err
	}
	return family.Read(formula.Source{Name: s.Family, Text: string(text)})
}

// factsOf are the facts of a sized boat, whose frame stands already.
func (s *Sizing) factsOf(b *sizing.Boat) (*facts, error) {
	return factsBy(b.Design, sizedFile(b), func(*design.Design) (*frame.Frame, error) { return b.Frame, nil })
}

func sizedFile(b *sizing.Boat) string { return b.Design.Slug() + ".toml" }

// designOf is the design of a sized boat as a file.
func designOf(b *sizing.Boat) Output {
	return Output{sizedFile(b), "the design, with a note of where each value came from", b.Write}
}

// files are a boat's design and, where they are asked for, its patterns.
func (s *Sizing) files(design Output, k *facts, w World) ([]Output, error) {
	out := []Output{design}
	if !s.Loft {
		return out, nil
	}
	l := NewLoft()
	l.Units, l.Printer, l.Quick, l.busy = s.Units, s.Printer, s.quick, s.busy
	patterns, err := l.loft(k, w)
	if err != nil {
		return nil, err
	}
	return append(out, patterns.Outputs...), nil
}
