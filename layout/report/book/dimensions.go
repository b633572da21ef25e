package book

import (
	"fmt"

	"ribwright/geometry/water/float"
	"ribwright/layout/report"
)

// dimensions lists the principal dimensions by the terms of ISO 8666.
func (w *writer) dimensions() {
	w.chapter("Dimensions and lines")
	w.say("Terms and symbols after ISO 8666, taken from the design and not from a finished boat; no claim of compliance is made. Waterline, draught and freeboard are those at rest with the people and gear of the design aboard.")
	h := w.Afloat.Hull
	aft, fore := h.Ends()
	wide := 0.0
	for _, x := range steps(aft, fore, 200) {
		_, sheer := sideAt(h, x)
		for _, z := range steps(0, sheer, 60) {
			wide = max(wide, breadthAt(h, x, z))
		}
	}
	_, midSheer := sideAt(h, 0)
	rows := [][]string{
		{"LH", "length of hull, stem to stem", w.Fine(fore - aft)},
		{"BH", "beam of hull, over the skin", w.Fine(2 * wide)},
		{"", "depth amidships, baseline to sheer", w.Fine(midSheer)},
		{"", "sheer at the bow and at the stern, over the baseline", w.Fine(w.Frame.Hull.Bow.TopZ) + ", " + w.Fine(w.Frame.Hull.Stern.TopZ)},
	}
	if r := w.Trial; r != nil {
		o := r.Rest
		rows = append(rows,
			[]string{"LWL", "length of waterline", w.Fine(o.LWL)},
			[]string{"BWL", "beam of waterline", w.Fine(o.BWL)},
			[]string{"TC", "draught of canoe body", w.Fine(o.Draft)},
			[]string{"FF", "freeboard forward, at the bow", w.Fine(freeboard(h, o.Plane, fore))},
			[]string{"FM", "freeboard amidships", w.Fine(freeboard(h, o.Plane, 0))},
			[]string{"FA", "freeboard aft, at the stern", w.Fine(freeboard(h, o.Plane, aft))},
			[]string{"", "least freeboard", w.Fine(o.Freeboard.Least)},
			[]string{"", "mass of the boat, estimated", w.Mass(w.Afloat.Empty.Load().Mass)},
			[]string{"", "displacement, all aboard", w.Mass(o.Displacement)},
			[]string{"", "block and prismatic coefficient", fmt.Sprintf("%.3f, %.3f", o.CB, o.CP)})
	}
	w.add(report.Table{Columns: []report.Column{names("Symbol"), text("Dimension"), figures("From the design")}, Rows: rows})
	if w.Trial == nil {
		w.warn("The boat as loaded finds no rest, so it has no waterline: "+w.NoTrial, "arithmetic of this design")
	}
}

// freeboard is the height of the sheer over the water at a station, mm.
func freeboard(h *float.Hull, p float.Plane, x float64) float64 {
	_, sheer := sideAt(h, x)
	return sheer - p.Water(x)
}

// sideAt returns the heights of keel and sheer at a station, between the hull's own
// stations in straight lines, mm.
func sideAt(h *float.Hull, x float64) (keel, sheer float64) {
	all := h.Profile()
	for i := 1; i < len(all); i++ {
		if a, b := all[i-1], all[i]; x <= b[0] || i == len(all)-1 {
			t := min(1, max(0, (x-a[0])/(b[0]-a[0])))
			return a[1] + t*(b[1]-a[1]), a[2] + t*(b[2]-a[2])
		}
	}
	return 0, 0
}

// breadthAt returns the half-breadth at a station and a height, mm. Between two of
// the hull's stations the sheer rises, and over the lower one's the side runs
// straight on to the sheer.
func breadthAt(h *float.Hull, x, z float64) float64 {
	all := h.Profile()
	for i := 1; i < len(all); i++ {
		a, b := all[i-1], all[i]
		if x > b[0] && i < len(all)-1 {
			continue
		}
		low := min(a[2], b[2]) - 1e-6
		if z <= low {
			break
		}
		_, sheer := sideAt(h, x)
		t := min(1, max(0, (x-a[0])/(b[0]-a[0])))
		top := (1-t)*h.HalfBreadth(a[0], a[2]-1e-6) + t*h.HalfBreadth(b[0], b[2]-1e-6)
		under := h.HalfBreadth(x, low)
		if sheer-low < 1e-6 {
			return top
		}
		return under + (top-under)*min(1, (z-low)/(sheer-low))
	}
	return h.HalfBreadth(x, z)
}

// steps returns n+1 even places from a to b.
func steps(a, b float64, n int) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = a + (b-a)*float64(i)/float64(n)
	}
	return out
}
