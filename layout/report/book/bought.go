package book

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Units that shops sell in where people measure in feet and pounds.
const (
	quart     = 0.946353    // US quart, L
	boardFoot = 2.359737e-3 // a foot square and an inch thick, m3
	squareFt  = 0.09290304  // m2
	foot      = 0.3048      // m
	yard      = 0.9144      // m
)

// upBy rounds up to whole steps.
func upBy(v, step float64) float64 {
	const speck = 1e-9
	return math.Ceil(v/step-speck) * step
}

// gallons is from how many liters on a thing is told in them, L.
const gallons = 10.0

// skinned is the cloth and the coating of one boat, none where several are bought for.
func (w *writer) skinned() (materials.Cloth, materials.Coating) {
	if w.Needs == nil {
		return materials.Cloth{}, materials.Coating{}
	}
	return w.Needs.Cloth, w.Needs.Coating
}

// sold is how much of a thing is bought, the unit, and what one of these costs, all as shops
// sell it.
func (w *writer) sold(l cost.Line) (amount, unit string, each float64) {
	if w.Letters.Units != measure.Imperial {
		return metricAmount(l), l.Unit, l.Each
	}
	c, k := w.skinned()
	switch {
	case l.Key == "cloth" && c.Roll > 0:
		return fmt.Sprintf("%.2f", quarterYards(c.OffRoll())), "yd", l.Each * yard * c.Roll / 1000
	case l.Key == "coating" && k.Count > 0:
		return fmt.Sprintf("%.1f", w.mixed()/quart), "quarts", l.Each * quart
	}
	for _, s := range []struct {
		metric, unit string
		size         float64
		decimals     int
	}{
		{"m3", "board feet", boardFoot, 0}, {"m2", "sq ft", squareFt, 0}, {"m", "ft", foot, 0},
		{"kg", "lb", measure.Pound, 1}, {"L", "quarts", quart, 1}, {"L", "gallons", 4 * quart, 1},
	} {
		if s.metric == l.Unit && (s.unit != "quarts" || l.Amount < gallons) {
			return measure.MM(upBy(l.Amount/s.size, math.Pow10(-s.decimals)), s.decimals), s.unit, l.Each * s.size
		}
	}
	return metricAmount(l), l.Unit, l.Each
}

func metricAmount(l cost.Line) string {
	switch l.Unit {
	case "m3":
		return fmt.Sprintf("%.4f", l.Amount)
	case "each", "lot":
		return fmt.Sprintf("%.0f", l.Amount)
	case "m":
		return wholeMeters(l.Amount)
	}
	return fmt.Sprintf("%.1f", l.Amount)
}

// workedOut says how the amount of a thing is worked out: by the figures that it is bought by.
func (w *writer) workedOut(l cost.Line) string {
	c, k := w.skinned()
	switch {
	case w.Letters.Units != measure.Imperial:
	case l.Key == "cloth" && c.Roll > 0:
		of := "one sheet"
		if c.Sheets > 1 {
			of = "sheets sewn together"
		}
		return fmt.Sprintf("%.2f yd off a roll %s wide, for %s", quarterYards(c.OffRoll()), w.Length(c.Roll), of)
	case l.Key == "coating" && k.Count > 0:
		later := ""
		if k.Count > 1 {
			later = fmt.Sprintf(", %s for each later one", w.liters(w.coat(k.EachLater)))
		}
		return fmt.Sprintf("%s on %.1f sq ft, each mixed by itself: %s for the first%s, with what stays in brush and tray", wording.Counted(k.Count, "coat"), c.Area/1e6/squareFt, w.liters(w.coat(k.FirstCoat)), later)
	}
	return fastened.ReplaceAllStringFunc(l.How, func(said string) string { return w.traded(l.Key, said) })
}

// fastened is how the shopping list has the size of a fastener, or of a stem's layers, mm.
var fastened = regexp.MustCompile(`\d+\.\d (?:x|mm for holes of) \d+ mm|of \d+ mm, `)

// traded letters such a size as it is sold: screws by their numbers, bolts in millimeters, pegs as
// the chapter Joints has them, layers as finely as the stems that they make up.
func (w *writer) traded(key, said string) string {
	all := strings.Fields(said)
	wide, _ := strconv.ParseFloat(all[0], 64)
	long, _ := strconv.ParseFloat(all[len(all)-2], 64)
	switch {
	case w.Letters.Units != measure.Imperial:
	case key == "screw":
		return measure.Imperial.Screw(wide, long)
	case key == "bolt-5":
		return bolt(wide, long)
	case key == "stem-ply":
		return "of " + all[1] + ".0 mm, "
	case key == "peg" && w.Needs != nil:
		for _, o := range w.Needs.Joints.All() {
			if f := o.Fastener; f.Key == key && measure.MM(f.Diameter, 1) == all[0] && math.Abs(f.Length-long) < 0.6 {
				return w.Drill(f.Diameter) + " for holes of " + w.whole(f.Length)
			}
		}
	}
	return said
}

// bolt letters a bolt by the name that it is sold under everywhere.
func bolt(wide, long float64) string { return fmt.Sprintf("M%.0f x %.0f mm", wide, long) }

// quarterYards is a length of cloth as shops cut it, yd.
func quarterYards(mm float64) float64 { return upBy(mm/1000/yard, 0.25) }

// off letters a length of cloth off the roll.
func (w *writer) off(mm float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.1f m", upBy(mm/1000, 0.1)), fmt.Sprintf("%.2f yd", quarterYards(mm)))
}

// meters letters a length of line or thread as shops sell it.
func (w *writer) meters(mm float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.1f m", upBy(mm/1000, 0.1)), fmt.Sprintf("%.0f ft", upBy(mm/1000/foot, 1)))
}

// worked letters the count of an operation, its unit and the minutes for one: by the foot and the
// square foot where people measure so.
func (w *writer) worked(k hours.Work) (count, unit, minutes string) {
	n, unit, each := k.Count, k.Unit, k.Minutes
	for _, s := range []struct {
		metric, unit string
		size         float64
	}{{"m2", "sq ft", squareFt}, {"m", "ft", foot}} {
		if rest, ok := strings.CutPrefix(unit, s.metric); ok && w.Letters.Units == measure.Imperial && (rest == "" || rest[0] == ' ') {
			n, unit, each = n/s.size, s.unit+rest, each*s.size
		}
	}
	return strings.TrimSuffix(fmt.Sprintf("%.1f", n), ".0"), unit, fmt.Sprintf("%.3g", each)
}
