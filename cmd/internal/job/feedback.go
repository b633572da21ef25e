package job

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	survey "ribwright/geometry/survey/built"
	"ribwright/geometry/wording"
)

// drawnBuild is what a design says that a build's notes stand beside: its wood, what parts
// weigh and what the stages take, of the design's skill; and a remark on these.
func (k *facts) drawnBuild() (*feedback.Build, string, error) {
	skill, err := practiced(nil, k.design)
	if err != nil {
		return nil, "", err
	}
	b, err := k.bending()
	if err != nil {
		return nil, "", err
	}
	boat, err := k.carried()
	if err != nil {
		return nil, "", err
	}
	out := k.ofWood()
	out.Skill = skill
	for _, p := range boat.Parts {
		if name := strings.ReplaceAll(strings.ToLower(p.Name), ",", " and"); slices.Contains(feedback.Parts(), name) {
			out.Lines = append(out.Lines, feedback.Line{What: feedback.Weight, Of: name, Drawn: p.Load().Mass})
		}
	}
	plan := cutlist.Heat(b.Heat()).Make(b.Frame, boat.Fittings...)
	needs := materials.Count(b.Joints, boat.Cloth, plan, boat.Fittings...)
	needs.AddForms(b.Forms)
	work := hours.Count(b.Frame, plan, needs, boat.Fittings...)
	for _, s := range hours.Stages() {
		if h := hours.Hours(work, s, hours.Experienced); h > 0 {
			out.Lines = append(out.Lines, feedback.Line{What: feedback.Hours, Of: string(s), Drawn: h})
		}
	}
	var steps []string
	for _, w := range work {
		if w.Stage == hours.Fit && w.Kit != "" && !slices.Contains(steps, w.Kit) {
			steps = append(steps, w.Kit)
		}
	}
	steps = append(steps, "first water")
	return out, fmt.Sprintf("Hours drawn are those of the build book for %s. The stage fitting out is these steps of its order of work together: %s.", skill.Who(), wording.And(steps)), nil
}

// ofWood is a build of which nothing but the design's wood is known.
func (k *facts) ofWood() *feedback.Build {
	return &feedback.Build{Wood: feedback.KnownWood(k.design.Ribs.Species), Stock: k.design.Bending.Stock.String()}
}

// measuredBuild is what a card says, with its builder's notes; nil for none.
func (k *facts) measuredBuild(m *survey.Report, notes *feedback.Build) *feedback.Build {
	out := k.ofWood()
	if notes != nil {
		copied := *notes
		out = &copied
		out.Lines = slices.Clone(notes.Lines)
		if out.Wood == feedback.OtherWood {
			out.Wood = feedback.KnownWood(k.design.Ribs.Species)
		}
	}
	if m == nil {
		return out
	}
	name := func(i int) string { return m.Frame.Frame.Ribs[i].Name }
	for _, r := range m.Spring.Readings {
		out.Lines = append(out.Lines, feedback.Line{What: feedback.Springback, Of: name(r.Rib), Drawn: k.design.Bending.Springback, Found: r.Back, At: r.Line})
	}
	for _, r := range m.Rests {
		out.Lines = append(out.Lines, feedback.Line{What: feedback.Deeper, Of: name(r.Rib), Found: r.Deeper, At: r.Line})
	}
	for _, b := range m.Bends() {
		l := feedback.Line{What: feedback.Rib, Of: name(b.Rib), Drawn: b.Ratio, At: b.Line}
		if b.Broken {
			l.Found = 1
		}
		out.Lines = append(out.Lines, l)
	}
	return out
}

// notes reads a builder's notes; nil where none are named.
func (w World) notes(name string) (*feedback.Build, error) {
	if name == "" {
		return nil, nil
	}
	data, err := w.Files.read(name, "file of notes", "")
	if err != nil {
		return nil, err
	}
	return feedback.Read(data, name)
}

// feedbackFile is a build's file to be sent. Its name says nothing of the boat either.
func feedbackFile(b *feedback.Build) Output {
	return Output{"feedback.csv", "what this build says of the formulas, without a name or a place: to be sent", func(to io.Writer) error { return feedback.Write(to, b) }}
}
