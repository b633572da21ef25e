package fair

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/survey/offsets"
)

// rail is a gunwale with its mortises. A stout one with shallow mortises takes ribs
// that lean far off its own square, as strong tumblehome does; so does one with
// less tilt, whose sheer must then be sprung or laminated in.
type rail struct {
	width, mortise float64 // mm
	tilt           float64 // at most, radians
}

// rails lists gunwales from the plainest. Common practice, no source.
func rails() []rail {
	return []rail{{20, 16, 0.30}, {20, 14, 0.02}, {24, 12, 0.30}, {24, 10, 0.02}, {30, 8, 0.30}}
}

// lean is how far a rib may lean off the gunwale's square, degrees: so far that
// enough wood stays beside the bottom of the mortise.
func (f *fit) lean() float64 {
	d := f.d
	const stays = 2.3 // mm; the frame asks for 2
	wall := float64(d.Gunwale.Width-d.Ribs.Thickness-d.Ribs.FitThickness) / 2
	return math.Atan2(wall-stays, float64(d.Ribs.MortiseDepth)) * 180 / math.Pi
}

// scantlings starts a design with sticks for a canoe of that size and a plain
// round section everywhere. The sizes are common practice, no source; they lie
// between those of the shipped designs.
func scantlings(title string, t *offsets.Table, r rail) *design.Design {
	d := design.Defaults()
	d.Title = title
	d.First("taken off the offsets of a boat that exists")
	d.For = fmt.Sprintf("Faired from a table of offsets of %d stations", len(t.Stations))
	stem := design.Stem{Rake: turned(10), ForefootRadius: 200, Siding: measure.Length(r.width + 4), Moulded: 60, Landing: 100, Horn: 18, Made: design.StemsPlywood}
	d.Bow = stem
	d.Gunwale = design.Gunwale{
		Species: "sitka spruce", Width: measure.Length(r.width), Height: 38, Plies: 3, Glued: design.GluedBent, ScarfSlope: 8,
	}
	d.Ribs.Species, d.Ribs.Width, d.Ribs.Thickness = "white ash", 22, 6
	d.Ribs.Pitch, d.Ribs.MortiseDepth = 130, measure.Length(r.mortise)
	d.Ribs.FromBow, d.Ribs.FromStern = 350, 350
	d.Keel = design.Keel{Species: "sitka spruce", Width: 40, Depth: 12}
	d.Stringers = design.Stringers{Species: "sitka spruce", Width: 20, Depth: 10, At: []float64{0.24, 0.42, 0.6, 0.8}}
	d.Breasthook = design.Breasthook{Species: "white ash", Length: 120, Thickness: 12, Hollow: 0}
	d.Skin.Thick = 0.7 // as coated skins of such canoes measure
	d.Hull.Sections = []design.Section{{BottomTurn: turned(15), BilgeRadius: 100, Flare: turned(5)}}
	return d
}

// skinOver is how far outside the middle of a rib the skin lies, mm.
func (f *fit) skinOver() float64 {
	d := f.d
	return float64(d.Ribs.Thickness/2 + d.Stringers.Depth + d.Skin.Thickness())
}

// seat is how far over the keel's skin the middle of a rib lies, mm.
func (f *fit) seat() float64 {
	d := f.d
	return float64(d.Skin.Thickness() + d.Keel.Depth + d.Ribs.Thickness/2)
}
