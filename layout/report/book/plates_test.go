package book

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
)

// glued finds the layers of stems of plywood in a shopping list.
var glued = regexp.MustCompile(`(\d+) blanks? of ([\d.]+) mm, ([\d.]+) x ([\d.]+) mm`)

// TestPlatesAreBlanks holds what the cutter's file cuts wood from to what is ripped, or for
// stems of plywood glued: each part of wood has a blank that is there once, as thick, long
// and wide, holds the part with all of its edge, and runs with its grain.
func TestPlatesAreBlanks(t *testing.T) {
	for name, f := range accounted(t) {
		t.Run(name, func(t *testing.T) {
			species := func(name string) string {
				w, err := f.Frame.Design.Wood(name)
				if err != nil {
					t.Fatal(err)
				}
				return w.Name
			}
			taken := map[int]bool{}
			widths := map[string]float64{}
			for _, s := range f.Plan.Sticks {
				if s.Edge { // staves, with what is planed off their joints
					widths[s.Member] += s.Width - 3
				}
			}
			stem := 0.0 // mm2 of all layers
			for _, q := range f.Plates.Parts {
				p := q.Part
				gauge := strings.HasPrefix(p.Name, "gauge") || strings.HasPrefix(p.Name, "form")
				bent := strings.HasSuffix(p.Name, "stem") && name == "laminated stems"
				if gauge || bent {
					if p.Blank != nil {
						t.Errorf("%s has a blank", p.Name)
					}
					continue
				}
				if p.Blank == nil {
					t.Errorf("%s has no blank", p.Name)
					continue
				}
				side := p.Blank[0].End().Sub(p.Blank[0].Start())
				if turn := math.Abs(math.Sin(math.Atan2(side.Y, side.X) - p.Grain)); turn > 1e-9 {
					t.Errorf("%s: its blank runs %.3f off the grain", p.Name, turn)
				}
				room := p.Blank.Bounds().Grow(1e-6)
				if b := p.Outline().Bounds(); p.Grain == 0 && !(room.Holds(b.Min) && room.Holds(b.Max)) {
					t.Errorf("%s fills %v of a blank of %v", p.Name, b, room)
				}
				long, wide := p.Blank[0].Length(), p.Blank[1].Length()
				if strings.HasSuffix(p.Material, "plywood") {
					stem += long * wide * float64(len(design.Sheets(p.Thickness)))
					continue
				}
				found := false
				for i, s := range f.Plan.Sticks {
					whole := s.Width
					if s.Edge {
						whole = widths[s.Member]
					}
					same := func(a, b float64) bool { return math.Abs(a-b) < 0.01 }
					if !taken[i] && s.Species == species(p.Material) && same(s.Length, long) && same(whole, wide) && same(s.Thickness, p.Thickness) {
						taken[i], found = true, true
						break
					}
				}
				if !found {
					t.Errorf("%s: no stick of %s is %.1f x %.1f x %.1f mm", p.Name, p.Material, long, wide, p.Thickness)
				}
			}
			for i, s := range f.Plan.Sticks {
				sawn := s.Family == cutlist.Breasthook || s.Family == cutlist.Thwart || s.Family == cutlist.Stem && s.Member == "" || strings.Contains(s.Part, "hanger")
				if sawn && !taken[i] && !s.Edge {
					t.Errorf("%s, %s, is on no plate", s.Mark, s.Part)
				}
			}
			listed := 0.0
			for _, n := range f.Needs.Items {
				if n.Key != "stem-ply" {
					continue
				}
				for _, m := range glued.FindAllStringSubmatch(n.How, -1) {
					count, _ := strconv.ParseFloat(m[1], 64)
					long, _ := strconv.ParseFloat(m[3], 64)
					wide, _ := strconv.ParseFloat(m[4], 64)
					listed += count * long * wide
				}
			}
			if math.Abs(listed-stem) > 0.01 {
				t.Errorf("plywood of %.0f mm2 is bought for stems, %.0f is cut", listed, stem)
			}
		})
	}
}
