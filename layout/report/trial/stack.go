package trial

import (
	"fmt"
	"strings"

	"ribwright/layout/report"
)

// stack tells how large and heavy the nest is, whether it keeps to its limits, and how
// to lift, tie and drive it.
func (n nest) stack() []report.Block {
	s, title := n.Stack, "The stack"
	if n.After != nil {
		title = "The stack, of the boats as they are"
	}
	var masses []string
	for _, b := range s.Boats {
		masses = append(masses, b.Title+" "+n.Mass(b.Mass))
	}
	out := []report.Block{section(title),
		say("%s high, %s wide, %s long; %s in all, estimated from wood and cloth: %s.", n.Length(s.Height), n.Length(s.Width), n.Length(s.Length), n.Mass(s.Mass), strings.Join(masses, ", "))}
	out = append(append(out, n.roof()...), n.door()...)
	return append(out,
		report.Caution{Words: fmt.Sprintf("Lifting: %s is %s each for two and %s each for four. Carry boats one by one and nest them where they will lie; a nest slides apart when tipped, and fingers are under it.", n.Mass(s.Mass), n.Mass(s.Mass/2), n.Mass(s.Mass/4)), Says: practice},
		report.Caution{Words: "Roof: the vehicle's and the bars' own limits hold, the lower of them, with bars and straps counted. Strap every boat to the bars and not only to the next, tie bow and stern down, and stop after the first minutes to look. A nest standing open side up fills with wind and rain: cover it. Turned over, every boat must be tied into the one around it.", Says: practice},
		report.Caution{Words: "Wind: a nest is as high as several boats. In gusts or at speed it lifts and slews; slow down, or leave it.", Says: practice})
}

func (n nest) roof() []report.Block {
	l := n.Limits.Roof
	if l <= 0 {
		return nil
	}
	if over := n.Over(); over > 0 {
		return []report.Block{report.Caution{Words: fmt.Sprintf("Roof: %s OVER the %s given, before bars and straps are counted.", n.Mass(over), n.Mass(l))}}
	}
	return []report.Block{say("Roof: %s left of the %s given, before bars and straps are counted.", n.Mass(-n.Over()), n.Mass(l))}
}

func (n nest) door() []report.Block {
	l := n.Limits.Door
	if l <= 0 {
		return nil
	}
	level, side := n.Through()
	switch {
	case level:
		return []report.Block{say("Door of %s: goes through level.", n.Length(l))}
	case side:
		return []report.Block{say("Door of %s: too wide level; goes through on its side, strapped together.", n.Length(l))}
	}
	return []report.Block{report.Caution{Words: fmt.Sprintf("Door of %s: does NOT go through, level or on its side.", n.Length(l))}}
}
