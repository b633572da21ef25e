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
	_, midSheer := h.Heights(0)
	rows := [][]string{
		{"LH", "length of hull, stem to stem", w.Fine(fore - aft)},
		{"BH", "beam of hull, over the skin", w.Fine(h.Beam())},
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
			[]string{"", "mass of the boat, estimated", w.Mass(w.Afloat.Own().Mass)},
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
	_, sheer := h.Heights(x)
	return sheer - p.Water(x)
}

// steps returns n+1 even places from a to b.
func steps(a, b float64, n int) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = a + (b-a)*float64(i)/float64(n)
	}
	return out
}
