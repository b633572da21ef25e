// Package hours estimates the hours of a build from operations counted on the
// frame: so many minutes each, times how practised the builder is.
package hours

import (
	"fmt"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/outfit/kit"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
)

// Skill is how practised a builder is.
type Skill int

// The skills. Average is the zero Skill.
const (
	Average Skill = iota
	Beginner
	Experienced
)

// Skills lists them from the most practised.
func Skills() []Skill { return []Skill{Experienced, Average, Beginner} }

// String returns the skill as a flag has it.
func (s Skill) String() string { return [...]string{"average", "beginner", "experienced"}[s] }

// Factor is how much longer than an experienced woodworker one of the skill takes.
// Common practice, no source: a beginner learns each operation once.
func (s Skill) Factor() float64 { return [...]float64{1.45, 1.70, 1}[s] }

// ParseSkill reads a skill, in capitals or not.
func ParseSkill(s string) (Skill, error) {
	for _, k := range Skills() {
		if strings.EqualFold(strings.TrimSpace(s), k.String()) {
			return k, nil
		}
	}
	return Average, fmt.Errorf("no skill %q; accepted: experienced, average, beginner", s)
}

// Off is the share by which an estimate of hours may be off either way. Common
// practice, no source.
const Off = 0.20

// Stage is a part of the build, in its order.
type Stage string

// The stages.
const (
	Loft    Stage = "patterns"
	Saw     Stage = "sawing"
	Gunwale Stage = "gunwales"
	Ends    Stage = "stems and breasthooks"
	Setup   Stage = "setting up"
	Bend    Stage = "ribs"
	Lash    Stage = "keel and stringers"
	Oil     Stage = "smoothing and oiling"
	Skin    Stage = "skin"
	Coat    Stage = "coating"
	Fit     Stage = "fitting out"
	Outfit  Stage = "outfits"
)

// Stages lists them in order.
func Stages() []Stage {
	return []Stage{Loft, Saw, Gunwale, Ends, Setup, Bend, Lash, Oil, Skin, Coat, Fit, Outfit}
}

// Work is one operation with its count.
type Work struct {
	Stage   Stage
	Name    string
	Count   float64
	Unit    string  // what is counted
	Minutes float64 // for one, by an experienced woodworker; common practice, no source
}

// Hours is the time of the work for a skill.
func (w Work) Hours(s Skill) float64 { return w.Count * w.Minutes / 60 * s.Factor() }

// Hours is the time of all the work of a stage, or of all stages for "".
func Hours(all []Work, stage Stage, s Skill) float64 {
	sum := 0.0
	for _, w := range all {
		if stage == "" || w.Stage == stage {
			sum += w.Hours(s)
		}
	}
	return sum
}

// Count lists the operations of a boat and its outfits. Waiting for glue, wood and
// coats to dry is not in it.
func Count(f *frame.Frame, p *cutlist.Plan, n *materials.Needs, kits ...kit.Kit) []Work {
	c := counter{f: f, p: p, n: n}
	c.wood()
	c.frame()
	c.cover()
	for _, k := range kits {
		c.outfit(k)
	}
	c.layers()
	return c.out
}
