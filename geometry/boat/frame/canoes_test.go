package frame

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/referencetest"
)

// canoe is one measured boat. Source: Adney and Chapelle, Smithsonian Bulletin
// 230 (1964); see testdata/canoes/README.md.
type canoe struct {
	figure                                       string
	length, beam, gunwales, depth, endRib, pitch float64
	ribs                                         int
	girth, bottomTurn, bilge, flare              float64
}

func canoes(t *testing.T) []canoe {
	t.Helper()
	var out []canoe
	for _, r := range referencetest.Table(t, "../../../testdata/canoes/boats.csv") {
		v := make([]float64, len(r))
		for i := 1; i < len(r); i++ {
			v[i] = referencetest.Number(t, r[i])
		}
		out = append(out, canoe{r[0], v[1], v[2], v[3], v[4], v[5], v[6], int(v[7]), v[8], v[9], v[10], v[11]})
	}
	return out
}

// asDesign enters a measured boat as a design: its printed length, beam and
// depth, its rib pitch and the place of its last ribs. Bark canoes do not print
// what is needed besides; those values are ordinary ones.
func (c canoe) asDesign(t *testing.T) *design.Design {
	t.Helper()
	file := fmt.Sprintf(`
title = "Figure %s"
[hull]
length = "%g mm"
beam = "%g mm"
depth = "%g mm"
symmetric = true
keel_straight = "1200 mm"
rocker_bow = "25 mm"
waterline = "100 mm"
[[hull.spreader]]
at = "%g mm"
beam = "%g mm"
[[hull.section]]
at = "0 mm"
bottom_turn = "%g deg"
bilge_radius = "%g mm"
flare = "%g deg"
[[hull.section]]
at = "%g mm"
bottom_turn = "25 deg"
bilge_radius = "100 mm"
flare = "0 deg"
[bow]
rake = "2 deg"
forefoot_radius = "110 mm"
siding = "34 mm"
moulded = "45 mm"
landing = "30 mm"
horn = "12 mm"
[gunwale]
species = "northern white cedar"
width = "28 mm"
height = "28 mm"
tilt = "0 deg"
[ribs]
species = "northern white cedar"
width = "40 mm"
thickness = "8 mm"
pitch = "%g mm"
at_midship = false
from_bow = "%g mm"
mortise_depth = "12 mm"
[keel]
species = "northern white cedar"
width = "40 mm"
depth = "10 mm"
[stringers]
species = "northern white cedar"
width = "20 mm"
depth = "8 mm"
at = [0.3, 0.6]
[breasthook]
species = "northern white cedar"
length = "100 mm"
thickness = "10 mm"
`, c.figure, c.length, c.gunwales, c.depth, c.length*0.32, c.gunwales*0.62, c.bottomTurn, c.bilge, c.flare,
		c.length*0.42, c.pitch, c.endRib-14)
	d, err := design.Decode(bytes.NewReader([]byte(file)), "figure "+c.figure)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestMeasuredCanoes enters measured canoes as designs. The midship girth must
// fall into the band measured on drawings of such boats, 0.83 to 0.86 of beam
// plus twice the depth for round bilges and up to 0.91 with strong tumblehome
// (printed to two decimals, so half a unit of the second is allowed), and within
// 1.5 % of the boat's own digitised girth. The ribs at the boat's pitch must come out
// within two of the counted number.
func TestMeasuredCanoes(t *testing.T) {
	for _, c := range canoes(t) {
		t.Run("figure "+c.figure, func(t *testing.T) {
			f, err := Build(c.asDesign(t))
			if err != nil {
				t.Fatal(err)
			}
			if got := len(f.Ribs); got < c.ribs-2 || got > c.ribs+2 {
				t.Errorf("%d ribs, counted %d", got, c.ribs)
			}
			mid, err := f.Hull.Section(0)
			if err != nil {
				t.Fatal(err)
			}
			girth := 2 * mid.Half.Length()
			lo, hi := 0.825, 0.865
			if c.flare < -10 {
				hi = 0.915
			}
			if ratio := girth / (c.beam + 2*c.depth); ratio < lo || ratio > hi {
				t.Errorf("girth %.0f mm is %.4f of beam plus twice the depth, measured band %.3f to %.3f", girth, ratio, lo, hi)
			}
			if c.girth > 0 && math.Abs(girth-c.girth) > 0.015*c.girth {
				t.Errorf("girth %.0f mm, digitised %.0f", girth, c.girth)
			}
		})
	}
}
