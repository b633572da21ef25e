package job

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"ribwright/geometry/marks"
)

// said reads a sentence of the book: each group after the expression's own is a quantity.
func (m *offPaper) said(b bookPDF, as, part string, unit, within float64, quantities ...string) {
	g := b.find(as)
	for i, q := range quantities {
		if g != nil {
			m.put(part, q, 0, unit*number(g[i+1]), unit*within)
		}
	}
}

// book reads what stands in words and tables.
func (m *offPaper) book(b bookPDF) {
	m.bookHull(b)
	m.bookGunwale(b)
	m.bookMortises(b)
	m.bookRibs(b)
	m.bookPushed(b)
	m.bookPieces(b)
	m.bookSeats(b)
	m.bookJoints(b)
	m.bookOutside(b)
	m.bookInside(b)
}

func (m *offPaper) bookHull(b bookPDF) {
	m.said(b, `Length of hull (\d+) mm Beam between the gunwale lines (\d+) mm Depth amidships, under the gunwales (\d+) mm`, "hull", 1, toWhole, "length", "beam", "depth")
	m.said(b, `Their undersides stand ([\d.]+) mm above the baseline at midship, ([\d.]+) mm at the bow, ([\d.]+) mm at the stern`, "hull", 1, toTenth, "sheer at midship", "sheer at bow", "sheer at stern")
	m.said(b, `designed waterline|patterns show ([\d.]+) mm up is the waterline`, "hull", 1, toWhole, "waterline")
	m.said(b, `([\d.]+) mm around at midship, ([\d.]+) mm along the keel`, "skin", 1, toTenth, "midship girth", "length")
	m.said(b, `its thickness ([\d.]+) mm`, "skin", 1, toTenth, "thickness")
	for i, row := range b.table("Spreaders while building", cellIs(0, `^(midship|[\d.]+ mm (aft|forward))$`)) {
		part := fmt.Sprintf("spreader %d", i+1)
		station := number(row.first)
		if row.first == "midship" {
			station = 0
		}
		m.put(part, "station", 0, station, toWhole)
		m.put(part, "from midship", 0, number(row.cells["Along the gunwale"]), toTenth)
		m.put(part, "beam", 0, number(row.cells["Middle to middle of the undersides"]), toTenth)
	}
}

func (m *offPaper) bookGunwale(b bookPDF) {
	m.said(b, `([\d.]+) mm wide and ([\d.]+) mm tall`, "gunwale", 1, toTenth, "width", "height")
	m.said(b, `mm tall, \d plies of ([\d.]+) mm`, "gunwale", 1, toTenth, "ply thickness")
	m.said(b, `Each is ([\d.]+) mm long on the straight stock`, "gunwale", 1, toTenth, "stock length")
	if g := b.find(`and leans ([\d.]+) degrees (out|in)ward`); g != nil {
		m.put("gunwale", "tilt", 0, number(g[1]+" "+g[2]+"ward")*degree, toTenth*degree)
	}
	m.said(b, `farther out than on the underside, by ([\d.]+) mm forward and ([\d.]+) mm aft`, "gunwale", 1, toTenth, "fore end longer above", "aft end longer above")
	for _, end := range []string{"bow", "stern"} {
		if g := b.find(`At the ` + end + ` the stock is sprung edgewise by ([\d.]+) mm from [\d.]+ mm off midship on, to a radius of ([\d.]+) m`); g != nil {
			m.put("gunwale", "edge-set rise, "+end, 0, number(g[1]), toTenth)
			m.put("gunwale", "edge-set radius, "+end, 0, 1000*number(g[2]), 50)
		}
		g := b.find(`The ` + end + `'s rise holds.*? stretches the underside by ([\d.]+) mm`)
		if g == nil {
			g = b.find(`The rise of either end holds.*? stretches the underside by ([\d.]+) mm`)
		}
		if g != nil {
			m.put("gunwale", "edge-set end shift, "+end, 0, number(g[1]), toTenth)
		}
	}
}

func (m *offPaper) bookMortises(b bookPDF) {
	deep := b.find(`Mortises are ([\d.]+) mm deep`)
	for _, row := range b.table("Mortises, mm", ofRib) {
		part := "mortise " + row.first
		m.put(part, "depth", 0, number(deep[1]), toTenth)
		m.put("rib "+row.first, "station", 0, number(row.cells["Station, along the boat"]), toTenth)
		for _, c := range []struct {
			heading, quantity string
			unit, within      float64
		}{
			{"From midship, along the stock", "from midship", 1, toTenth}, {"Station, along the boat", "station", 1, toTenth}, {"Lean, degrees", "bevel", degree, toTenth},
			{"Along, degrees", "lean along", degree, toTenth}, {"Twist, degrees", "twist", degree, toWhole}, {"Wood to the next", "to next", 1, toTenth},
			{"Thinner wall, at the bottom", "wall at bottom", 1, toTenth}, {"To a scarf drawn", "to scarf", 1, toTenth}, {"Ease", "ease", 1, toTenth},
		} {
			m.put(part, c.quantity, 0, c.unit*number(row.cells[c.heading]), c.unit*c.within)
		}
		if row.cells["Ease"] == "-" {
			m.put(part, "ease", 0, 0, 2*toTenth)
		}
	}
}

var bendTold = regexp.MustCompile(`([\d.]+) to ([\d.]+) [a-z ]+(?:, radius (\d+) and ([\d.]+) deg(?:, (?:hot|form) (\d+))?)?`)

func (m *offPaper) bookRibs(b bookPDF) {
	stock := b.find(`, ([\d.]+) mm wide and ([\d.]+) mm thick, \d+ of them`)
	tenon := b.find(`a tenon of ([\d.]+) mm at each end`)
	for _, row := range b.table("Lengths and widths, mm", ofRib) {
		for _, rib := range ribsNamed(row.first) {
			part := "rib " + rib
			m.put(part, "tenon", 0, number(tenon[1]), toTenth)
			m.put(part, "width", 0, number(stock[1]), toTenth)
			m.put(part, "thickness", 0, number(stock[2]), toTenth)
			m.put(part, "length", 0, number(row.cells["Shoulder to shoulder"]), toTenth)
			m.put(part, "blank", 0, number(row.cells["Blank"]), toTenth)
			m.put(part, "half-breadth", 0, number(row.cells["Width in place"])/2, toWhole/2)
			m.put(part, "depth", 0, number(row.cells["Depth under the gunwales"]), toWhole)
			m.put(part, "hot width", 0, number(row.cells["Held hot"]), toFive)
			m.put(part, "relax to", 0, number(row.cells["Relax to, before pegging"]), toFive)
		}
	}
	for _, row := range b.table("Middles of the stringers, from the middle of the blank", ofRib) {
		for _, rib := range ribsNamed(row.first) {
			for heading, cell := range row.cells {
				if n, is := strings.CutPrefix(heading, "S"); is {
					m.put("rib "+rib, "stringer mark", int(number(n)), number(cell), toTenth)
				}
			}
		}
	}
	for _, row := range b.table("Middles of the ribs on the straight battens", ofRib) {
		for heading, cell := range row.cells {
			batten := "keel"
			if n, is := strings.CutPrefix(heading, "S"); is {
				batten = "stringer " + n
			}
			m.put(batten, "middle of rib "+row.first, 0, number(cell), toTenth)
		}
	}
}

// bookBends reads the ribs' bends, once their sheets are read.
func (m *offPaper) bookBends(b bookPDF) {
	for _, row := range b.table("Bends, from the middle of the blank", ofRib) {
		for _, rib := range ribsNamed(row.first) {
			m.bendsOf("rib "+rib, row)
		}
	}
}

// bendsOf reads a rib's bends. A straight piece is as long on the blank as in the boat; a
// bend in the boat by its radius and its turn. What the bends add to the blank is left.
func (m *offPaper) bendsOf(part string, row tableRow) {
	text := ""
	for heading, cell := range row.cells {
		if strings.HasPrefix(heading, "From where to where") {
			text = cell
		}
	}
	all := bendTold.FindAllStringSubmatch(strings.Join(strings.Fields(text), " "), -1)
	sum, within := 0.0, 0.0
	for i, g := range all {
		if i+1 < len(all) {
			m.put(part, "bend mark", i+1, number(g[2]), toTenth)
		}
		var long, off float64
		if g[3] == "" {
			long, off = m.straight(part, i, i == len(all)-1, g)
			m.put(part, "arc sweep", i+1, 0, crumb)
		} else {
			m.put(part, "arc radius", i+1, number(g[3]), toWhole)
			m.put(part, "arc sweep", i+1, number(g[4])*degree, toTenth*degree)
			if g[5] != "" {
				m.put(part, "form radius", i+1, number(g[5]), toWhole)
			}
			r, a := m.of[marks.Name{Part: part, Quantity: "arc radius", Number: i + 1}], number(g[4])*degree
			long, off = r.value*a, r.within*a+r.value*toTenth*degree
		}
		m.put(part, "arc length", i+1, long, off)
		sum, within = sum+2*long, within+2*off
	}
	m.put(part, "correction", 0, m.get(part, "length", 0)-sum, within+toTenth)
}

// straight is how long a straight piece is: from mark to mark, the last one to the shoulder.
func (m *offPaper) straight(part string, i int, last bool, told []string) (long, within float64) {
	if !last {
		return number(told[2]) - number(told[1]), 2 * toTenth
	}
	shoulder, mark := m.of[marks.Name{Part: part, Quantity: "length"}], m.of[marks.Name{Part: part, Quantity: "bend mark", Number: i}]
	return shoulder.value/2 - mark.value, shoulder.within/2 + mark.within
}

// bookPushed reads what ribs do that are only pushed in, heads free and heads held.
func (m *offPaper) bookPushed(b bookPDF) {
	both := func(cell string) (hinged, clamped float64) {
		one, other, two := strings.Cut(cell, " to ")
		if hinged = number(one); !two {
			return hinged, hinged
		}
		return hinged, number(other)
	}
	for _, row := range b.table("Ribs only pushed in", ofRib) {
		for _, rib := range ribsNamed(row.first) {
			part := "rib " + rib
			var out, in, lean, least [2]float64
			out[0], out[1] = both(row.cells["Outside by"])
			in[0], in[1] = both(row.cells["Inside by"])
			lean[0], lean[1] = both(row.cells["Flare, deg"])
			least[0], least[1] = both(row.cells["Least radius"])
			for i, heads := range []string{"hinged", "clamped"} {
				m.put(part, "flare pushed in, "+heads, 0, lean[i]*degree, toWhole*degree)
				m.put(part, "off pushed in, "+heads, 0, math.Max(out[i], in[i]), toWhole)
				m.put(part, "least radius pushed in, "+heads, 0, least[i], toWhole)
			}
		}
	}
}

func (m *offPaper) bookPieces(b bookPDF) {
	for i, row := range b.table("Cross pieces, under the gunwales", cellIs(0, `^C\d+$`)) {
		part := fmt.Sprintf("thwart %d", i+1)
		m.put(part, "length", 0, number(row.cells["Length"]), toTenth)
		m.put(part, "between gunwales", 0, number(row.cells["Between the gunwales"]), toTenth)
		m.put(part, "thickness", 0, number(row.cells["Thick"]), toTenth)
		m.put(part, "end cut", 0, number(row.cells["End cut, degrees off square"])*degree, toTenth*degree)
		m.put(part, "end cut back below", 0, number(row.cells["Lower face cut back"]), toTenth)
	}
	if g := b.find(`Stems: ([\d.]+) mm thick at the bow, ([\d.]+) mm at the stern`); g != nil {
		m.put("bow stem", "thickness", 0, number(g[1]), toTenth)
		m.put("stern stem", "thickness", 0, number(g[2]), toTenth)
	}
	all := b.findAll(`(Bow|Stern) breasthook, 1:[\d.]+, from above, flat: ([\d.]+) mm thick, sides lean ([\d.]+) degrees (out|in)ward at the top, rising ([\d.]+) degrees`)
	for _, g := range all {
		ends := []string{strings.ToLower(g[1])}
		if len(all) == 1 {
			ends = []string{"bow", "stern"}
		}
		for _, end := range ends {
			m.put(end+" breasthook", "thickness", 0, number(g[2]), toTenth)
			m.put(end+" breasthook", "bevel", 0, number(g[3]+" "+g[4]+"ward")*degree, toTenth*degree)
			m.put(end+" breasthook", "slope", 0, number(g[5])*degree, toTenth*degree)
		}
	}
}

func (m *offPaper) bookSeats(b bookPDF) {
	seats := b.table("Seats, mm", cellIs(1, `^(hung|saddle|pad)$`))
	hung := 0
	rails, bolts := b.tables("Rails and hangers of ", cellIs(0, `^(front|after)$`)), b.tables("Bolts of the hangers", cellIs(0, `^(front|after)$`))
	clear := b.findAll(`(\d+) mm are clear under the front rail`)
	spread := b.findAll(`two rails, and two spreaders of ([\d.]+) mm between them`)
	skews := b.findAll(`off square in plan by ([\d.]+) degrees, the edge toward the \w+ shorter, in front and ([\d.]+) degrees`)
	for i, row := range seats {
		part := fmt.Sprintf("seat %d", i+1)
		m.put(part, "station", 0, number(row.cells["Middle at"]), toWhole)
		m.put(part, "top over floor", 0, number(row.cells["Top over the floor"]), toTenth)
		m.put(part, "long", 0, number(row.cells["Along"]), toTenth)
		m.put(part, "wide", 0, number(row.cells["Across"]), toTenth)
		m.put(part, "front edge under the back one", 0, number(row.cells["Front edge lower than the back"]), toTenth)
		if row.cells["Kind"] != "hung" {
			continue
		}
		n := hung
		hung++
		m.put(part, "clear under front edge", 0, number(clear[n][1]), toWhole)
		m.put(part, "spreader", 0, number(spread[n][1]), toTenth)
		for _, r := range rails[n] {
			m.put(part, r.first+" rail station", 0, number(r.cells["Rail at"]), toWhole)
			m.put(part, r.first+" rail length", 0, number(r.cells["Rail's length"]), toTenth)
			m.put(part, r.first+" hanger length", 0, number(r.cells["Hanger's length"]), toTenth)
			m.put(part, r.first+" bolts under the gunwale top", 0, number(r.cells["Bolts down"]), toTenth)
			m.put(part, r.first+" hanger lean", 0, number(r.cells["Lean, degrees"])*degree, toTenth*degree)
		}
		for _, r := range bolts[n] {
			m.put("gunwale", fmt.Sprintf("bolt of %s, %s, from midship", part, r.first), 1, number(r.cells["After bolt"]), toTenth)
			m.put("gunwale", fmt.Sprintf("bolt of %s, %s, from midship", part, r.first), 2, number(r.cells["Fore bolt"]), toTenth)
		}
		m.put(part, "front hanger skew", 0, number(skews[n][1])*degree, toTenth*degree)
		m.put(part, "after hanger skew", 0, number(skews[n][2])*degree, toTenth*degree)
	}
}

// bookJoints reads the table of joints; its figures are the bow's. What differs at the
// stern stands on its pattern and under its drawings.
func (m *offPaper) bookJoints(b bookPDF) {
	holes := func(joint string) string {
		for _, row := range b.table("Joints of the frame", cellIs(0, `^(Keel|Stringers?|Gunwales|Breasthooks|Rib) to`)) {
			if strings.HasPrefix(row.first, joint) {
				return row.cells["Fastening and size"] + " " + row.cells["Holes"]
			}
		}
		return ""
	}
	ends := []string{"bow"}
	if b.find(`Both ends are alike\.`) != nil {
		ends = append(ends, "stern")
	}
	for _, end := range ends {
		for i, v := range places(holes("Keel to"), `([\d ,and]+) mm from the keel's end`) {
			m.put(end+" stem", "screw from the keel's end", i+1, v, toWhole)
		}
	}
	if g := b.findAll(`([\d.]+) mm from its end and ([\d.]+) mm up`); len(g) > 0 && g[0][0] == g[len(g)-1][0] {
		for _, end := range []string{"bow", "stern"} {
			m.put(end+" stem", "gunwale hole from its end", 0, number(g[0][1]), toWhole)
			m.put(end+" stem", "gunwale hole up", 0, number(g[0][2]), toWhole)
		}
	}
	hooks := b.findAll(`(Bow|Stern) breasthook between the gunwales, 1:[\d.]+, from above\. (Pegs [\d ,and]+ mm from the gunwales' ends)`)
	for _, g := range hooks {
		for i, v := range places(g[2], `Pegs ([\d ,and]+) mm`) {
			m.put(strings.ToLower(g[1])+" breasthook", "peg from the gunwale's end", i+1, v, toWhole)
			if len(hooks) == 1 {
				m.put("stern breasthook", "peg from the gunwale's end", i+1, v, toWhole)
			}
		}
	}
	if g := regexp.MustCompile(`a peg, ([\d.]+) mm.* ([\d.]+) mm up from the underside, (\d+) mm deep`).FindStringSubmatch(holes("Rib to gunwale")); g != nil {
		m.put("rib peg", "diameter", 0, number(g[1]), toTenth)
		m.put("rib peg", "up", 0, number(g[2]), toTenth)
		m.put("rib peg", "hole depth", 0, number(g[3]), toWhole)
	}
	if g := b.find(`The thinnest inner wall at that height, at rib \w+, is ([\d.]+) mm`); g != nil {
		m.put("rib peg", "least wall", 0, number(g[1])+toTenth, toTenth) // lettered on the safe side
	}
}

// places are numbers in a row, as "36 and 71" or "48, 101 and 153", where words are so.
func places(words, as string) (out []float64) {
	if g := regexp.MustCompile(as).FindStringSubmatch(words); g != nil {
		for _, f := range regexp.MustCompile(`[\d.]+`).FindAllString(g[1], -1) {
			out = append(out, number(f))
		}
	}
	return out
}

func (m *offPaper) bookOutside(b bookPDF) {
	for _, row := range b.table("Strips outside the skin", cellIs(0, `^(Outwale|Keel strip)`)) {
		part := strings.ToLower(row.first)
		m.put(part, "off the skin", 0, number(row.cells["Off the skin"]), toTenth)
		m.put(part, "along the skin", 0, number(row.cells["Along it"]), toTenth)
		m.put(part, "length", 0, number(row.cells["Finished length"]), toTenth)
	}
	for _, row := range b.table("Screws of the strips", cellIs(0, `^(Outwale|Keel strip)`)) {
		name, both, _ := strings.Cut(row.first, ",")
		var at []float64
		for _, s := range strings.Split(row.cells["Places"], ",") {
			v := number(s)
			at = append(at, v)
			if both != "" && v != 0 {
				at = append([]float64{-v}, at...)
			}
		}
		for i, v := range at {
			m.put(strings.ToLower(name), "screw from midship", i+1, v, toWhole)
		}
	}
	m.said(b, `Put ([\d.]+) m of`, "painters", 1000, toTenth, "length")
}

func (m *offPaper) bookInside(b bookPDF) {
	for _, row := range b.table("Floor slats, of", cellIs(0, `^\d+$`)) {
		part := "floor " + row.first
		m.put(part, "width", 0, number(row.cells["Width"]), toTenth)
		m.put(part, "thickness", 0, number(row.cells["Thickness"]), toTenth)
		m.put(part, "aft end", 0, number(row.cells["Aft end at"]), toWhole)
		m.put(part, "fore end", 0, number(row.cells["Fore end at"]), toWhole)
		n := int(number(row.cells["Slats"]))
		for i, s := range strings.Split(row.cells["Middles from the middle line, each side"], ",") {
			out, at := (n+1)/2+i, number(s) // from the middle slat outward, or from the two beside the middle
			if n%2 == 0 {
				out++
			}
			m.put(part, "slat from the middle line", out, at, toTenth)
			m.put(part, "slat from the middle line", n+1-out, -at, toTenth)
		}
	}
	for i, row := range b.table("Footbraces, mm", cellIs(1, `^\d+$`)) {
		part := fmt.Sprintf("footbrace %d", i+1)
		m.put(part, "after face", 0, number(row.cells["Board's after face at"]), toWhole)
		m.put(part, "board", 0, number(row.cells["Board"]), toTenth)
		m.put(part, "rail", 0, number(row.cells["Rails, each"]), toTenth)
		m.put(part, "rail from the middle line", 0, number(row.cells["Rails' middles from the middle line"]), toTenth)
	}
	for i, row := range b.table("Backrests, of two bars", cellIs(1, `mm (aft|forward)$`)) {
		part := fmt.Sprintf("backrest %d", i+1)
		m.put(part, "fore face", 0, number(row.cells["Fore face at"]), toWhole)
		m.put(part, "lower edge over the floor", 0, number(row.cells["Lower edge over the floor"]), toTenth)
		m.put(part, "board", 0, number(row.cells["Bars across"]), toTenth)
	}
}
