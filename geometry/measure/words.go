package measure

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// customary is how a metric unit reads in the other system: by a factor in a unit, or as
// a length.
type customary struct {
	factor   float64
	unit     string
	small    string // the unit of what is under one, of which that has four
	decimals int    // more than the metric figure has
	length   bool   // factor brings it to mm
}

// The units that words for people hold. One foot is 304.8 mm, one pound-force
// 4.4482216152605 N, one US gallon 3.785411784 l, exactly; a mile is 1609.344 m.
func customaries() map[string]customary {
	const foot, force, gallon, mile = 0.3048, Pound * Gravity, 3.785411784, 1609.344
	return map[string]customary{
		"mm": {factor: 1, length: true}, "cm": {factor: 10, length: true}, "m": {factor: 1000, length: true},
		"m2":   {factor: 1 / (foot * foot), unit: "sq ft"},
		"kg":   {factor: 1 / Pound, unit: "lb"},
		"N":    {factor: 1 / force, unit: "lb"},
		"N m":  {factor: 1 / (force * foot), unit: "ft lb"},
		"N/mm": {factor: 25.4 / force, unit: "lb/in"}, "N/mm2": {factor: 25.4 * 25.4 / force, unit: "psi"},
		"km/h": {factor: 1000 / mile, unit: "mph"}, "m/s": {factor: 3600 / mile, unit: "mph"},
		"l":    {factor: 1 / gallon, unit: "gal", small: "US quarts", decimals: 1},
		"L":    {factor: 1 / gallon, unit: "gal", small: "US quarts", decimals: 1},
		"ml":   {factor: 128 / gallon / 1000, unit: "fl oz"},
		"m2/L": {factor: gallon / 4 / (foot * foot), unit: "sq ft/quart"}, "kg/m2": {factor: foot * foot * 16 / Pound, unit: "oz/sq ft", decimals: 1},
		"g/m2": {factor: OuncesPerSquareYard(1), unit: "oz/yd2", decimals: 1}, "kg/m3": {factor: foot * foot * foot / Pound, unit: "lb/cu ft"},
	}
}

const (
	figure   = `[-+]?\d+(?:\.\d+)?`
	units    = `N/mm2|N/mm|N m|kg/m2|g/m2|kg/m3|km/h|m2/L|m/s|mm|cm|m2|kg|ml|m|l|L|N`
	quantity = figure + `(?:(?: to | and | x |-)` + figure + `)* (?:` + units + `)`
)

var (
	// said is a metric quantity, perhaps with the same in the other system behind it; or what
	// stands in both already, or in quotes, or is sold in millimeters, and stays.
	said = regexp.MustCompile(`((?:in|lb|ft|"|knots|mph) \([^()]*\)|(?:^|[\s(])"[^"]*"|M\d+ (?:x|by) \d+ mm|[Ww]rench of \d+ mm)|` +
		`(^|[^\w."'/-])(` + quantity + `)( \([^()]*\d(?: in| lb|"| knots| oz/yd2)\))?($|[^\w/])`)
	// listed is what a cell of a table may begin with: figures with one unit behind the last.
	listed  = regexp.MustCompile(`^(` + figure + `(?:, ` + figure + `)+ (?:` + units + `))(?:$|[^\w/])`)
	ending  = regexp.MustCompile(` (?:` + units + `)$`)
	numeral = regexp.MustCompile(figure)
	whole   = regexp.MustCompile(`^` + figure + `$`)
	// named is what has a name of its own in the other system, or another zero.
	named = regexp.MustCompile(`screws of \d+\.\d mm|` + figure + ` degrees Celsius`)
)

// Words letters every metric quantity in a text for people in this system: "252 mm" as
// "9 15/16 in", "75 kg" as "165 lb", speeds in mph, stresses in psi. What is given to the
// tenth of a millimeter keeps it behind the inches, and what stands in both systems already
// is left with the inches or pounds first. Metric, or any other System, returns the text.
func (s System) Words(text string) string {
	if s != Imperial {
		return text
	}
	text = named.ReplaceAllStringFunc(text, func(said string) string {
		v, _ := strconv.ParseFloat(numeral.FindString(said), 64)
		if said[0] == 's' {
			return "screws " + ScrewNumber(v)
		}
		return MM(v*1.8+32, 0) + " degrees Fahrenheit"
	})
	if m := listed.FindStringSubmatch(text); m != nil {
		text = customaryOf(m[1]) + text[len(m[1]):]
	}
	for from := 0; from < len(text); {
		m := said.FindStringSubmatchIndex(text[from:])
		if m == nil {
			break
		}
		if m[2] >= 0 { // in both already
			from += m[1]
			continue
		}
		at, end := from+m[6], from+m[7]
		words := customaryOf(text[at:end])
		if m[8] >= 0 {
			words = strings.Trim(text[from+m[8]:from+m[9]], " ()")
			end = from + m[9]
		}
		text = text[:at] + words + text[end:]
		from = at + len(words)
	}
	return text
}

// Cell letters a bare figure that is in a metric unit, for a column headed with what
// UnitOf gives; what is no figure comes back as it is.
func (s System) Cell(text, unit string) string {
	c, known := customaries()[unit]
	if s != Imperial || !known || !whole.MatchString(text) {
		return text
	}
	v, _ := strconv.ParseFloat(text, 64)
	if c.length {
		return strings.TrimSuffix(c.inches(text)(v*c.factor), " in")
	}
	return c.letter(v, text, 0)
}

// Value brings a metric figure to the unit that UnitOf gives; lengths to decimal inches.
func (s System) Value(v float64, unit string) float64 {
	c, known := customaries()[unit]
	switch {
	case s != Imperial || !known:
		return v
	case c.length:
		return v * c.factor / 25.4
	}
	return v * c.factor
}

// UnitOf is what Cell letters a metric unit in.
func (s System) UnitOf(unit string) string {
	c, known := customaries()[unit]
	switch {
	case s != Imperial || !known:
		return unit
	case c.length:
		return "in"
	}
	return c.unit
}

// customaryOf letters one quantity, or several with one unit.
func customaryOf(text string) string {
	figures, unit := text, ""
	if i := ending.FindStringIndex(text); i != nil {
		figures, unit = text[:i[0]], text[i[0]+1:]
	}
	c := customaries()[unit]
	if c.length {
		return c.lengths(text, figures)
	}
	if v, err := strconv.ParseFloat(figures, 64); err == nil && c.small != "" && math.Abs(v*c.factor) < 1 {
		c.factor, c.unit = 4*c.factor, c.small
	}
	out := numeral.ReplaceAllStringFunc(figures, func(n string) string {
		v, _ := strconv.ParseFloat(n, 64)
		return c.letter(v, n, 1)
	})
	return out + " " + c.unit
}

// lengths letters lengths in inches, or in feet where one of them reaches a foot.
func (c customary) lengths(text, figures string) string {
	feet, fine := false, false
	for _, n := range numeral.FindAllString(figures, -1) {
		v, _ := strconv.ParseFloat(n, 64)
		feet = feet || math.Abs(v*c.factor) >= 304
		fine = fine || c.fine(n)
	}
	out := numeral.ReplaceAllStringFunc(figures, func(n string) string {
		v, _ := strconv.ParseFloat(n, 64)
		if feet {
			return c.feet(v*c.factor, n)
		}
		return strings.TrimSuffix(c.inches(figures)(v*c.factor), " in")
	})
	if !feet {
		out += " in"
	}
	if fine {
		out += " (" + text + ")"
	}
	return out
}

// feet letters a length as finely as it is given: whole meters in whole feet, tenths in whole
// inches, hundredths in quarters.
func (c customary) feet(mm float64, had string) string {
	const inch, foot = 25.4, 304.8
	_, places, _ := strings.Cut(had, ".")
	switch {
	case c.factor == 1000 && strings.Trim(places, "0") == "" && len(places) < 2 && math.Abs(mm) >= foot/2:
		return fmt.Sprintf("%.0f ft", mm/foot)
	case c.factor == 1000 && len(places) == 1:
		return FeetInches(inch * math.Round(mm/inch))
	case c.factor == 1000 && len(places) == 2:
		return FeetInches(inch / 4 * math.Round(4*mm/inch))
	}
	return FeetInches(mm)
}

// fine reports whether a figure is given to the tenth of a millimeter.
func (c customary) fine(figure string) bool { return c.factor == 1 && strings.Contains(figure, ".") }

// inches is what letters lengths that are given as finely as these figures.
func (c customary) inches(figures string) func(mm float64) string {
	if c.fine(figures) {
		return Gauged
	}
	return Sixteenths
}

// letter letters a figure to as many places as it had, and small ones to so many more.
func (c customary) letter(v float64, had string, more int) string {
	_, places, _ := strings.Cut(had, ".")
	n := len(places) + c.decimals
	v *= c.factor
	if math.Abs(v) < 3 {
		n += more
	}
	if c.unit == "psi" {
		return strconv.Itoa(int(math.Round(v/10)) * 10)
	}
	return MM(v, min(n, 2))
}
