package built

// Bend is a rib of the card that was bent, with its hardest bend: the inner radius over the
// thickness as it is bent hot.
type Bend struct {
	Rib, Line int
	Ratio     float64
	Broken    bool
}

// Bends lists the ribs on the card that were bent or broke; one of which only the length was
// measured says nothing.
func (r *Report) Bends() []Bend { return r.bent }

func (r *Report) bends(card []Row) {
	for _, row := range card {
		if !row.Broken && !row.Stands() && !(row.Is[Free] > 0) {
			continue
		}
		b := Bend{Rib: row.Rib, Line: row.Line, Broken: row.Broken}
		for _, a := range r.Report.Ribs[row.Rib].Arcs {
			if b.Ratio == 0 || a.OnForm < b.Ratio {
				b.Ratio = a.OnForm
			}
		}
		if b.Ratio >= 1 {
			r.bent = append(r.bent, b)
		}
	}
}
