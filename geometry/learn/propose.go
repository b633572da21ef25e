package learn

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/learn/pool"
	"ribwright/geometry/wording"
)

// Home is the file that a proposed line is for.
type Home int

// The files.
const (
	Family Home = iota // of formulas
	Labor              // what stages and skills take
)

// String names the file.
func (h Home) String() string { return [...]string{"family", "labor"}[h] }

// Proposal is a line that follows from the builds, with its reason. Nothing takes it up by
// itself.
type Proposal struct {
	Home     Home
	Name     string // what the line sets
	Line     string
	Why      string
	Evidence string
}

// Propose lists the lines that say something else than before, by more than the figures are
// told to.
func (r *Report) Propose() []Proposal {
	var out []Proposal
	if q := r.Find(feedback.Springback); q != nil {
		out = append(out, q.springback()...)
	}
	if b := r.Breaks; b != nil {
		out = append(out, b.propose()...)
	}
	if q := r.Find(feedback.Hours); q != nil {
		out = append(out, q.hours()...)
	}
	return out
}

// springback proposes a share for each wood. A family does not know how stock was dried, so
// a wood's kinds count by their boards.
func (q *Quantity) springback() []Proposal {
	const step = 0.005 // half of one in a hundred: no finer than a board is known
	var woods []string
	now, weight := map[string]float64{}, map[string]float64{}
	moved := false
	var evidence []string
	before := 0.0
	for _, k := range q.Kinds {
		wood, _, _ := strings.Cut(k.Name, ", ")
		if wood == feedback.OtherWood {
			continue
		}
		if weight[wood] == 0 {
			woods = append(woods, wood)
		}
		n := float64(k.Units)
		now[wood] += n * k.Now
		weight[wood] += n
		before = k.Before
		moved = moved || math.Abs(k.Now-k.Before) >= step
		evidence = append(evidence, fmt.Sprintf("%s: %s %s, counted on %.1f %% as %s", k.Name, say(k.Units, "board"), percent(k.Says), 100*k.Before, worth(k.Worth)))
	}
	if !moved || len(woods) == 0 {
		return nil
	}
	line := ""
	for _, w := range woods {
		share := math.Min(math.Max(now[w]/weight[w], 0), 0.4)
		line += fmt.Sprintf("if rib_wood == %q then %.1f %% else ", w, 100*share)
	}
	return []Proposal{{Family, "bending.springback", fmt.Sprintf("bending.springback = %s%.1f %%", line, 100*before), "what the boards sprang back, with what was counted on", strings.Join(evidence, "; ")}}
}

// propose proposes the hardest bend of a rib.
func (b *Breaks) propose() []Proposal {
	limit := math.Round(2*b.Limit.Is) / 2
	if math.Abs(limit-b.Before) < 0.5 {
		return nil
	}
	return []Proposal{{Family, "ribs_bend", fmt.Sprintf("check ribs_bend = tightest_rib >= %g", limit), "where one rib in twenty broke, with what was counted on",
		fmt.Sprintf("%d of %s broke in %s; one in twenty at an inner radius of %.1f thicknesses, %.1f to %.1f, counted on %g as %s", b.Broken, wording.Counted(b.Bent, "rib"), wording.Counted(b.Builds, "build"), b.Limit.Is, b.Limit.Low, b.Limit.High, b.Before, worth(b.Worth))}}
}

// hours proposes factors of skills and stages.
func (q *Quantity) hours() []Proposal {
	const step = 0.05 // of hours: no finer than they are known
	var out []Proposal
	for _, k := range q.Kinds {
		if math.Abs(k.Now-k.Before) < step {
			continue
		}
		out = append(out, Proposal{Labor, "skill " + k.Name, fmt.Sprintf("skill,%s,%.2f", k.Name, math.Exp(k.Now)), "how much longer than an experienced builder one of that skill takes",
			fmt.Sprintf("%s %s, counted on %.2f as %s", say(k.Units, "build"), times(k.Says), math.Exp(k.Before), worth(k.Worth))})
	}
	for _, s := range q.Sides {
		if math.Abs(s.Says.Is) < step {
			continue
		}
		out = append(out, Proposal{Labor, "stage " + s.Name, fmt.Sprintf("stage,%s,%.2f", s.Name, math.Exp(s.Says.Is)), "how much longer the stage takes than was worked out, beside the others",
			fmt.Sprintf("%s %s, drawn to the other stages", say(s.Units, "build"), times(s.Says))})
	}
	return out
}

func worth(builds float64) string {
	if builds < 0.95 {
		return "less than a build, for the builds contradict it"
	}
	return wording.Counted(int(math.Round(builds)), "build")
}

// say is so many of a noun with their verb.
func say(n int, noun string) string {
	if n == 1 {
		return "1 " + noun + " says"
	}
	return wording.Counted(n, noun) + " say"
}

// percent and times are intervals in words.
func percent(i pool.Interval) string {
	if math.IsInf(i.Low, 0) {
		return fmt.Sprintf("%.1f %%, too few to say how surely", 100*i.Is)
	}
	return fmt.Sprintf("%.1f %%, %.1f to %.1f", 100*i.Is, 100*i.Low, 100*i.High)
}

func times(i pool.Interval) string {
	if math.IsInf(i.Low, 0) {
		return fmt.Sprintf("%.2f times, too few to say how surely", math.Exp(i.Is))
	}
	return fmt.Sprintf("%.2f times, %.2f to %.2f", math.Exp(i.Is), math.Exp(i.Low), math.Exp(i.High))
}
