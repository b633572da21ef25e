package frame

import (
	"cmp"
	"math"
	"slices"
)

// Group is a set of ribs so nearly alike that one marking strip serves them.
type Group struct {
	Rib   Rib      // the one nearest midship, whose marks the strip carries
	Names []string // of all of them, the nearest to midship first, forward before aft
}

// groupRibs gathers ribs whose lengths, marks, half-breadths and depths differ by
// less than tol mm from those of the group's first. It returns the groups from
// midship outward.
func groupRibs(ribs []Rib, tol float64) []Group {
	sorted := slices.Clone(ribs)
	slices.SortStableFunc(sorted, func(a, b Rib) int {
		return cmp.Or(cmp.Compare(math.Abs(a.Station), math.Abs(b.Station)), cmp.Compare(b.Station, a.Station))
	})
	var out []Group
next:
	for _, r := range sorted {
		for i := range out {
			if alike(out[i].Rib, r, tol) {
				out[i].Names = append(out[i].Names, r.Name)
				continue next
			}
		}
		out = append(out, Group{r, []string{r.Name}})
	}
	return out
}

func alike(a, b Rib, tol float64) bool {
	if len(a.BendMarks) != len(b.BendMarks) || !near(a.Length, b.Length, tol) ||
		!near(a.Section.HalfBreadth, b.Section.HalfBreadth, tol) || !near(a.Section.Depth, b.Section.Depth, tol) {
		return false
	}
	for i := range a.BendMarks {
		if !near(a.BendMarks[i], b.BendMarks[i], tol) {
			return false
		}
	}
	for i := range a.StringerMarks {
		if !near(a.StringerMarks[i], b.StringerMarks[i], tol) {
			return false
		}
	}
	return true
}

func near(a, b, tol float64) bool { return a == b || math.Abs(a-b) < tol }
