package sail

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// ReefLine is where a reef is taken in, from luff to leech, mm: parallel to the foot. A vee
// has none, it is rolled up.
func (p Plan) ReefLine(reef int) (luff, leech geometry.Point, ok bool) {
	if p.Rig == design.Vee || reef < 1 {
		return luff, leech, false
	}
	tack, clew := p.Corners[0], p.Corners[len(p.Corners)-1]
	on := tack.Add(geometry.Pt(0, reefShare*float64(reef)*(p.Corners[1].Y-tack.Y)))
	luff, leech, ok = Chord(p.Corners, on, clew.Sub(tack))
	if ok && luff.X < leech.X {
		luff, leech = leech, luff
	}
	return luff, leech, ok
}

// Chord returns where a line crosses a polygon that is nowhere hollow; false when it misses.
func Chord(pts []geometry.Point, on, way geometry.Point) (a, b geometry.Point, ok bool) {
	low, high := math.Inf(1), math.Inf(-1)
	unit := way.Unit()
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		dp, dq := unit.Cross(p.Sub(on)), unit.Cross(q.Sub(on))
		if (dp < 0) != (dq < 0) {
			t := p.Lerp(q, dp/(dp-dq)).Sub(on).Dot(unit)
			low, high = math.Min(low, t), math.Max(high, t)
		}
	}
	return on.Add(unit.Scale(low)), on.Add(unit.Scale(high)), high > low
}

// ReefIn is the line of a reef on a piece of the finished sail, in the axes of the cloth.
func (f *Fit) ReefIn(reef int, piece []geometry.Point) (a, b geometry.Point, ok bool) {
	luff, leech, ok := f.Plan.ReefLine(reef)
	if !ok || len(piece) < 3 {
		return a, b, false
	}
	on := f.Cloth.Turn.Apply(luff)
	return Chord(piece, on, f.Cloth.Turn.Apply(leech).Sub(on))
}

// tiesApart is how far the ties of a reef, and the eyelets of a luff or a head, stand apart at
// most, mm. Common practice, no source.
const tiesApart = 300.0

// spaced is into how many equal parts a length is divided, none longer than tiesApart.
func spaced(long float64) int { return int(math.Ceil(long/tiesApart - 1e-9)) }

// Ties is how many ties a reef has between its ends, and how far apart, mm.
func (f *Fit) Ties(reef int) (count int, apart float64) {
	luff, leech, ok := f.Plan.ReefLine(reef)
	if !ok {
		return 0, 0
	}
	long := leech.Sub(luff).Norm()
	return spaced(long) - 1, long / float64(spaced(long))
}

// heelRoom is kept between a sprit's heel and the partner, mm: its line hangs there. Our own choice.
const heelRoom = 50.0

// judgeReefs says what a reef asks for. A sprit goes down with its sail.
func (f *Fit) judgeReefs() {
	for r := 1; r < f.Useful(); r++ {
		_, leech, ok := f.Plan.ReefLine(r)
		if !ok {
			return
		}
		down := reefShare * float64(r) * (f.Plan.Corners[1].Y - f.Plan.Corners[0].Y)
		if s := f.Plan.Spars[0]; f.Plan.Rig == design.Spritsail && f.Tack+s.From.Y-down < f.Mast.PartnerZ+PartnerThick/2+heelRoom {
			f.Findings.Judge(finding.Unfit, "reefs", finding.Arithmetic, "with %s the sprit's heel would come down to the partner: take fewer reefs (outfit.sail.reefs) and less wind", f.States[r].Name)
			return
		}
		n, apart := f.Ties(r)
		f.Findings.Say("reefs", finding.Practice, "%s: ease the halyard, let the sail down %.0f mm, tie the eyelet on the luff where the tack was and the one on the leech, %.0f mm over the clew, where the clew was; roll up the foot and tie it with %d ties %.0f mm apart. Its area and center are those of what is left of this cloth", f.States[r].Name, down, leech.Sub(f.Plan.Corners[len(f.Plan.Corners)-1]).Norm(), n, apart)
	}
}
