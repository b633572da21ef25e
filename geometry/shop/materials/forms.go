package materials

import (
	"cmp"
	"slices"

	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wording"
)

// The sheet that forms are sawn from, and what the saw wants round each plate, mm.
// Common practice, no source.
const (
	sheetLong = 2440.0
	sheetWide = 1220.0
	formGap   = 15.0
)

// Forms is what the forms for bending ribs take.
type Forms struct {
	Count  int // forms
	Plates int // to saw: a form has as many as it has layers
	Sheets int // that they are sawn from
}

// AddForms counts the forms of ribs that are bent on them, and their sheets; without
// forms nothing is added.
//
// How: the plates are laid in rows across the sheets, the highest first, each in the
// first row that has room. So many sheets are enough; a close nest may save one.
func (n *Needs) AddForms(forms []bend.Form) {
	var plates [][2]float64 // along the sheet and across it
	for _, f := range forms {
		b := f.Outline.Bounds()
		for range f.Layers {
			plates = append(plates, [2]float64{b.W() + formGap, b.H() + formGap})
		}
	}
	n.Forms = Forms{len(forms), len(plates), rows(plates)}
	if n.Forms.Count > 0 {
		n.add("form", "plywood for forms", float64(n.Forms.Sheets), "each", "%s, %s: sheets of 1220 x 2440 mm, 18 mm thick",
			wording.Counted(n.Forms.Count, "form"), wording.Counted(n.Forms.Plates, "plate"))
	}
}

// rows lays plates in rows and counts the sheets.
func rows(plates [][2]float64) int {
	type row struct{ high, left float64 }
	slices.SortStableFunc(plates, func(a, b [2]float64) int { return cmp.Compare(b[1], a[1]) })
	var all []row
	for _, p := range plates {
		i := slices.IndexFunc(all, func(r row) bool { return r.left >= p[0] })
		if i < 0 {
			i, all = len(all), append(all, row{p[1], sheetLong})
		}
		all[i].left -= p[0]
	}
	var sheets []float64 // what is left across each
	for _, r := range all {
		i := slices.IndexFunc(sheets, func(left float64) bool { return left >= r.high })
		if i < 0 {
			i, sheets = len(sheets), append(sheets, sheetWide)
		}
		sheets[i] -= r.high
	}
	return len(sheets)
}
