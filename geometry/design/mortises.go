package design

import "math"

// gapAgrees is how far the middle ply's thickness may be off what a mortise is to be
// wide, mm: with the usual fit of 0.3 mm a rib still goes in by hand and does not
// rattle. Our own choice.
const gapAgrees = 0.2

// checkMortises refuses mortises by gap where the gap would not fit the ribs.
func (d *Design) checkMortises(c *checker) {
	const key = "gunwale.mortises"
	g, r := d.Gunwale, d.Ribs
	if g.Mortises != ByGap || c.first != nil {
		return
	}
	c.must(g.Plies >= 3 && g.Plies%2 == 1, key,
		`"by gap" wants a middle ply, and gunwale.plies is %d; accepted: an odd number of plies, 3 or more, or gunwale.mortises = "cut"`, g.Plies)
	if c.first != nil {
		return
	}
	ply, want := float64(g.Width)/float64(g.Plies), float64(r.Thickness+r.FitThickness)
	const slack = 1e-9
	c.must(math.Abs(ply-want) <= gapAgrees+slack && ply >= float64(r.Thickness)-slack, key,
		`"by gap" leaves slots as wide as the middle ply, %s mm, and ribs of %s mm with %s mm of fit want %s mm; accepted: within %s mm and no narrower than the rib; make gunwale.width %s mm, or ribs.thickness %s mm`,
		short(math.Round(ply*100)/100), mm(r.Thickness), mm(r.FitThickness), short(want), short(gapAgrees),
		short(want*float64(g.Plies)), short(math.Floor((ply-float64(r.FitThickness))*10)/10))
}
