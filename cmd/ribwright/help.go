package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
	"ribwright/layout/report"
)

// overview says what the program can do.
func (p program) overview() string {
	var b strings.Builder
	b.WriteString("ribwright: full-size patterns for a canoe built without a mold\n\n")
	for _, v := range p {
		fmt.Fprintf(&b, "  %-8s %s\n           for example: %s\n", v.name, v.line, "ribwright "+v.name+" "+v.example)
	}
	b.WriteString("\n  help VERB      the verb's flags\n" +
		"  help design    every key of the design file\n" +
		"  help species   the woods the program knows\n" +
		"  help words     the trade's words, a line each\n" +
		"  help TOPIC     more on one of these:\n" +
		"    " + strings.Join(slices.DeleteFunc(topics(), func(s string) bool { return s == "words" }), " ") + "\n" +
		"  --version\n\n" + strings.Replace(report.Promise, " advice ", "\nadvice ", 1) + "\n")
	return b.String()
}

// help explains a verb, a topic, the design file or the woods; without a word, all.
func (p program) help(args []string, w io.Writer) error {
	if len(args) > 1 {
		return usageError{fmt.Errorf("help: too many arguments: %s; usage: ribwright help [%s]", strings.Join(args[1:], " "), strings.Join(p.explained(), "|"))}
	}
	page := map[string]func() string{"design": helpDesign, "species": helpSpecies}[strings.Join(args, "")]
	if len(args) == 0 {
		page = p.overview
	}
	if page != nil {
		_, err := io.WriteString(w, page())
		return err
	}
	if v := p.find(args[0]); v != nil {
		return v.do([]string{"--help"}, console{w, w})
	}
	if text, ok := topic(args[0]); ok {
		_, err := io.WriteString(w, text)
		return err
	}
	return usageError{fmt.Errorf("no help on %q; there is: %s", args[0], strings.Join(p.explained(), ", "))}
}

// explained names all that help knows.
func (p program) explained() []string {
	return append(append(p.list(), "design", "species"), topics()...)
}

func helpDesign() string {
	var b strings.Builder
	b.WriteString("The design file is TOML. Lengths and angles stand in quotes with their unit, as\n" +
		"\"720 mm\", '28 3/8 in' or \"12 deg\". Keys, with the kind of value each takes:\n\n")
	for _, k := range design.Keys() {
		kind, _, _ := strings.Cut(strings.ReplaceAll(k.Want, ", such as", " in quotes"), " in quotes")
		if k.Default != "" {
			kind += ", " + k.Default + " when left out"
		}
		fmt.Fprintf(&b, "%s (%s)\n    %s\n", k.Name, kind, k.Doc)
	}
	b.WriteString("\nShipped designs to start from: " + strings.Join(design.ShippedNames(), ", ") + "\n")
	return b.String()
}

func helpSpecies() string {
	var b strings.Builder
	b.WriteString("Woods at 12 % moisture, small clear samples: for comparing, not for stress design.\n" +
		"Bend limits (inner radius over thickness, steamed) are from memory: test-bend first.\n\n")
	fmt.Fprintf(&b, "%-20s %7s %6s %6s %8s %8s %8s  %s\n", "species", "kg/m3", "N/mm2", "N/mm2", "radius/t", "radius/t", "movement", "strength")
	fmt.Fprintf(&b, "%-20s %7s %6s %6s %8s %8s %8s  %s\n", "", "density", "stiff", "strong", "strap", "free", "for 1 %", "from")
	for _, s := range timber.All() {
		moves := "-"
		if s.Tangential > 0 {
			moves = fmt.Sprintf("%.5f", s.Tangential)
		}
		fmt.Fprintf(&b, "%-20s %7.0f %6.0f %6.0f %8.3g %8.3g %8s  %s\n", s.Name, s.Density, s.MOE, s.MOR,
			math.Round(s.StrapRatio*10)/10, s.FreeRatio, moves, s.Strength)
	}
	b.WriteString("\nMovement is along the growth rings, mm per mm for 1 % of moisture, from a copy of\n" +
		"handbook values. Better values of your own go into [[wood]] in the design file.\n")
	return b.String()
}
