// Package hours estimates the hours of a build from operations counted on the
// frame: so many minutes each, times how practised the builder is.
package hours

import (
	"fmt"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
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

// Who says of whom a skill is told, as "a beginner".
func (s Skill) Who() string {
	return [...]string{"an average builder", "a beginner", "an experienced builder"}[s]
}

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

// Stages lists them in the order of the build.
func Stages() []Stage {
	return []Stage{Loft, Saw, Gunwale, Ends, Setup, Bend, Lash, Oil, Skin, Coat, Fit, Outfit}
}

// Work is one operation with its count.
type Work struct {
	Stage     Stage
	Name      string
	Count     float64
	Unit      string  // what is counted
	Minutes   float64 // for one, by an experienced woodworker; common practice, no source
	Kit       string  // what it is done for; "" for frame and skin, or for all together
	kit.Share         // of the count
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

// Within is the time of the work that a scope covers.
func Within(all []Work, scope kit.Scope, s Skill) float64 {
	sum := 0.0
	for _, w := range all {
		w.Count = w.Share.Within(w.Count, scope)
		sum += w.Hours(s)
	}
	return sum
}

// Count lists the operations of a boat, its fittings and its outfits. Waiting for glue, wood and
// coats to dry is not in it.
func Count(f *frame.Frame, p *cutlist.Plan, n *materials.Needs, kits ...kit.Kit) []Work {
	c := counter{f: f, p: p, n: n}
	c.wood()
	c.frame()
	c.cover()
	for _, k := range kits {
		c.fitted(k)
	}
	return c.out
}

type counter struct {
	f   *frame.Frame
	p   *cutlist.Plan
	n   *materials.Needs
	out []Work
}

func (c *counter) add(s Stage, name string, count float64, unit string, minutes float64) {
	c.share(s, name, amount{n: count}, unit, minutes)
}

// share adds an operation of which kits have a share.
func (c *counter) share(s Stage, name string, a amount, unit string, minutes float64) {
	if a.n > 0 {
		c.out = append(c.out, Work{Stage: s, Name: name, Count: a.n, Unit: unit, Minutes: minutes, Share: a.Share})
	}
}

// amount is a count with what kits have of it.
type amount struct {
	n float64
	kit.Share
}

func (a *amount) of(scope kit.Scope, n float64) {
	a.n += n
	a.Take(scope, n)
}

// What sawing takes, minutes: one crosscut with its mark, a meter planed, the saw set for
// a section.
const (
	crosscut = 0.7
	planing  = 0.6
	setting  = 6.0
)

// wood is everything from the patterns to planed sticks.
func (c *counter) wood() {
	var rips, pieces, metres, joints, settings amount
	for _, w := range c.p.Woods {
		for _, b := range w.Boards {
			for _, cut := range b.Pieces() {
				pieces.of(c.p.Sticks[cut.Stick].Scope(), 1)
			}
		}
		long, s := c.p.Ripped(w)
		rips.n, rips.Own, rips.Outfits = rips.n+long/1000, rips.Own+s.Own/1000, rips.Outfits+s.Outfits/1000
	}
	sections := map[[2]float64]bool{}
	for i, s := range c.p.Sticks { // the frame's come first
		metres.of(s.Scope(), s.Length/1000)
		joints.of(s.Scope(), float64(len(c.p.Cuttings[i].Joints)))
		if section := [2]float64{s.Width, s.Thickness}; !sections[section] {
			sections[section] = true
			settings.of(s.Scope(), 1)
		}
	}
	c.add(Loft, "print, check and tape patterns", 1, "set", 90)
	c.share(Saw, "set the saw for a section", settings, "sections", setting)
	c.share(Saw, "rip", rips, "m", 0.9)
	c.share(Saw, "crosscut and mark", pieces, "pieces", crosscut)
	c.share(Saw, PlaneSticks, metres, "m", planing)
	c.share(Saw, Scarf, joints, "scarfs", 15)
	c.add(Saw, Staves, float64(c.p.GlueLines()), "glue lines", 20)
}

// frame is the frame, from the gunwales to the last lashing.
func (c *counter) frame() {
	f := c.f
	ribs, plies := float64(len(f.Ribs)), float64(f.Design.Gunwale.Plies)
	if f.Gunwale.Made() {
		c.add(Gunwale, Sheer, 2*plies, "plies", 15)
	}
	c.add(Gunwale, GluePlies, 2*(plies-1), "glue lines", 15)
	c.out = append(c.out, Mortises(f, f.Design.Gunwale.Mortises)...)
	c.add(Gunwale, "cut the ends", 4, "ends", 8)
	c.add(Ends, "saw and shape stems", 2, "stems", 45)
	c.add(Ends, "make and fit breasthooks", 2, "breasthooks", 35)
	c.add(Setup, "spread the gunwales and tie the ends", 1, "boat", 110)
	c.add(Bend, RigBox, 1, "boat", 45)
	c.add(Bend, ReadyRibs, ribs, "ribs", 3)
	c.add(Bend, SawForms, float64(c.n.Forms.Plates), "plates", 20)
	c.add(Bend, "steam and bend", ribs, "ribs", 3)
	if d := f.Design; d.Bending.Stock == design.KilnDried {
		c.add(Bend, "soak, turn and steam longer", ribs, "ribs", 1)
	}
	if f.Design.Bending.Method == design.OnForms {
		c.add(Bend, "clamp on the form, tie and take off", ribs, "ribs", 4)
	} else {
		c.add(Bend, "tie and sight the bilge battens", 2, "battens", 12)
	}
	c.add(Bend, FitRibs, ribs, "ribs", 5)
	c.add(Lash, Battens, float64(1+2*len(f.Stringers)), "battens", 10)
	c.add(Lash, "lash", float64(c.n.Joints.Keel.Count+c.n.Joints.Stringers.Count), "crossings", 1.5)
	c.add(Lash, "lash stringer ends, feet and gunwale ends", float64(c.n.Joints.Lashings()), "lashings", 4)
	c.add(Lash, CrossPieces, float64(len(f.Thwarts)), "cross pieces", 25)
}

// cover is the rest: oil, skin, coats, fitting out.
func (c *counter) cover() {
	g := &c.f.Gunwale
	area := c.n.Cloth.Area / 1e6
	faces := amount{c.n.WoodFaces / 1e6, c.n.Faces.Scaled(1e6, 1)}
	c.share(Oil, "smooth and round over", faces, "m2 of wood", 8)
	c.share(Oil, OilWood, amount{faces.n * materials.OilCoats, faces.Scaled(1, materials.OilCoats)}, "m2 and coat", 3)
	if c.f.Design.Skin.Cloth > 0 {
		c.add(Skin, "lay out and stretch the cloth", 1, "boat", 60)
		c.add(Skin, "fasten the cloth", 2*(g.Fore-g.Aft)/1000, "m of gunwale", 4)
		c.add(Skin, "gather and sew the ends", 2, "ends", 45)
		c.add(Skin, "sew sheets together", c.n.Cloth.Seam/1000, "m of seam", 12)
	}
	coats := float64(c.n.Coating.Count)
	c.add(Coat, "coat", area*coats, "m2 and coat", 4)
	c.add(Coat, "mix, clean up", coats, "coats", 15)
	c.share(Fit, FirstWater, amount{1, kit.Share{Own: 1}}, "boat", 60)
}

// fitted is the work on a kit besides sawing, which is counted with the boards.
func (c *counter) fitted(k kit.Kit) {
	stage, first := stageOf(k.Own), len(c.out)
	boards, metres := 0.0, map[kit.Form]float64{}
	for _, p := range k.Pieces {
		n := float64(p.Count)
		metres[p.Form] += n * p.Long / 1000
		if p.Form == kit.Board {
			boards += n
		}
	}
	if !k.Own {
		c.add(stage, k.Name+": print, check and tape patterns", 1, "set", 30)
	}
	c.add(stage, k.Name+": "+GlueLayers, c.glueLines(k.Name), "glue lines", 15)
	c.add(stage, k.Name+": "+ShapeBoards, boards, "boards", 20)
	c.add(stage, k.Name+": "+PlaneSpars, metres[kit.Spar], "m", 20)
	c.add(stage, k.Name+": "+PlaneBeams, metres[kit.Beam], "m", 8)
	c.add(stage, k.Name+": sew hems and seams", k.Sewing, "m", 5)
	c.add(stage, k.Name+": patch and eyelet corners", float64(k.Corners), "corners", 15)
	for _, w := range k.Works {
		at := stage
		if w.Bare {
			at = Oil
		}
		c.add(at, k.Name+": "+w.Name, w.Count, w.Unit, w.Minutes)
	}
	if !k.Own {
		c.add(stage, k.Name+": fit and try on land", 1, "outfit", 60)
	}
	for i := range c.out[first:] {
		w := &c.out[first+i]
		w.Kit = k.Name
		w.Take(k.Scope(), w.Count)
	}
}

// stageOf is when a kit is made: what the boat is not ready without, before outfits.
func stageOf(own bool) Stage {
	if own {
		return Fit
	}
	return Outfit
}

// glueLines counts the joints between layers and staves of thick and wide pieces of a kit.
func (c *counter) glueLines(kit string) float64 {
	lines, begun := 0.0, map[string]bool{}
	for _, s := range c.p.Sticks {
		if s.Member == "" || s.Kit != kit {
			continue
		}
		if begun[s.Member] {
			lines++
		}
		begun[s.Member] = true
	}
	return lines
}
