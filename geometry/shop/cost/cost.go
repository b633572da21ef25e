// Package cost puts prices on what a boat takes, line by line, with how far each
// may be off. It knows no currency: a table's prices are all in one, whichever.
package cost

import (
	"bytes"
	"embed"
	"fmt"
	"io"
	"maps"
	"math"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/wording"
)

// Table is a list of prices.
type Table struct {
	Name   string             `toml:"name"`
	About  string             `toml:"about"`
	Wood   map[string]float64 `toml:"wood"`   // a cubic metre of boards, by species; "other" for the rest
	Item   map[string]float64 `toml:"item"`   // one unit, by the key of the bill
	Spread map[string]float64 `toml:"spread"` // share by which a price may be off either way; "other" for the rest
}

//go:embed prices/*.toml
var files embed.FS

// Levels names the tables that come with the program. Their prices are invented,
// to compare one boat with another.
func Levels() []string { return []string{"local", "mixed", "shipped"} }

// Text returns the file of a table that comes with the program, to begin one's own from.
// Errors: an unknown name.
func Text(name string) ([]byte, error) {
	if !slices.Contains(Levels(), name) {
		return nil, fmt.Errorf("no price level %q; there are %s, or a file of your own", name, strings.Join(Levels(), ", "))
	}
	return files.ReadFile("prices/" + name + ".toml")
}

// Level returns a table that comes with the program. Errors: an unknown name.
func Level(name string) (*Table, error) {
	data, err := Text(name)
	if err != nil {
		return nil, err
	}
	return decoded(data, name)
}

// most is the highest price read and the largest file, bytes.
const (
	most    = 1e9
	maxFile = 1 << 20
)

// Read reads and checks a price table. The name is used in messages only.
//
// Errors: text that is no TOML, a key by which nothing is bought, a price below 0 or past 1e9, a
// table without a price for other woods.
func Read(r io.Reader, name string) (*Table, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(data) > maxFile {
		return nil, fmt.Errorf("%s: is larger than 1 MB, so it is no price table", name)
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	t, err := decoded(data, name)
	if err != nil {
		return nil, err
	}
	return t, t.known(data, name)
}

// decoded is a table whose prices are checked, but not whether anything is bought by its keys.
func decoded(data []byte, name string) (*Table, error) {
	t := &Table{}
	d := toml.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(t); err != nil {
		return nil, notRead(err, name)
	}
	return t, t.check(name)
}

func (t *Table) check(name string) error {
	for _, part := range []struct {
		key    string
		prices map[string]float64
		top    float64
	}{{"wood", t.Wood, most}, {"item", t.Item, most}, {"spread", t.Spread, 1}} {
		for _, k := range slices.Sorted(maps.Keys(part.prices)) {
			if v := part.prices[k]; !(v >= 0 && v <= part.top) || math.IsInf(v, 0) {
				return fmt.Errorf("%s: %s.%s: %.6g is out of range; accepted: 0 to %.6g", name, part.key, k, v, part.top)
			}
		}
	}
	if _, ok := t.Wood["other"]; !ok {
		return fmt.Errorf(`%s: wood.other: is missing; accepted: the price of a cubic meter of woods that are not named`, name)
	}
	return nil
}

// Line is one thing to buy with its price.
type Line struct {
	materials.Item
	Each   float64 // price of a unit; 0 where boards are priced one by one
	Likely float64
	Spread float64 // share by which it may be off either way
	Lacks  bool    // the table has no price for it: it adds nothing to the sum
	From   string  // where the price comes from: "wood.other of table mixed"
}

// Estimate is the cost of the materials.
type Estimate struct {
	Lines  []Line
	Likely float64
	// Off is by how much the sum may be off when prices err on their own, one up and
	// one down; OffAll when all err the same way.
	Off, OffAll float64
}

// Without says how many things to buy the sum leaves out, ", without ..."; "" for none.
func (e Estimate) Without() string {
	n := 0
	for _, l := range e.Lines {
		if l.Lacks {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", without %d of %s to buy that the table has no price for", n, wording.Counted(len(e.Lines), "thing"))
}

// Within returns what a scope costs: each line by the share of its amount. Boards
// that the frame would take alone count as the frame's.
func (e Estimate) Within(all kit.Scope) float64 {
	sum := 0.0
	for _, l := range e.Lines {
		sum += l.Share.Scaled(l.Amount, l.Likely).Within(l.Likely, all)
	}
	return sum
}

// Of prices a bill.
func Of(n *materials.Needs, p *cutlist.Plan, t *Table) Estimate {
	var out Estimate
	squares := 0.0
	for _, item := range n.Items {
		l := t.price(item, p)
		out.Lines = append(out.Lines, l)
		out.Likely += l.Likely
		out.OffAll += l.Likely * l.Spread
		squares += l.Likely * l.Spread * l.Likely * l.Spread
	}
	out.Off = math.Sqrt(squares)
	return out
}

func (t *Table) price(item materials.Item, p *cutlist.Plan) Line {
	l := Line{Item: item}
	kind, species, isWood := strings.Cut(item.Key, ": ")
	if !isWood {
		each, ok := t.Item[item.Key]
		l.Each, l.Likely, l.Spread = each, each*item.Amount, t.spread(item.Key)
		l.From, l.Lacks = fmt.Sprintf("item.%s of %s", item.Key, t.Name), !ok
		return l
	}
	l.Spread = t.spread(kind)
	t.boards(&l, p, species)
	return l
}

// boards prices those of one wood: each at its own price where it has one, nothing for
// one that is owned, the others by their volume.
func (t *Table) boards(l *Line, p *cutlist.Plan, species string) {
	priced, owned, volume := 0, 0, 0.0
	for _, w := range p.Woods {
		if w.Species != species {
			continue
		}
		for _, b := range w.Boards {
			switch {
			case b.Board.Owned():
				owned++
			case b.Board.Priced:
				priced++
				l.Likely += b.Board.Price
			default:
				volume += b.Board.Volume() / 1e9
			}
		}
	}
	var from []string
	if volume > 0 {
		key := species
		if _, ok := t.Wood[key]; !ok {
			key = "other"
		}
		l.Likely += t.Wood[key] * volume
		from = append(from, fmt.Sprintf("wood.%s of %s", key, t.Name))
		if priced == 0 {
			l.Each = t.Wood[key]
		}
	}
	if priced > 0 {
		from = append(from, fmt.Sprintf("%s at the prices in the design", wording.Counted(priced, "board")))
	}
	if owned > 0 {
		cost := "cost"
		if owned == 1 {
			cost = "costs"
		}
		from = append(from, fmt.Sprintf("%s of your own %s nothing", wording.Counted(owned, "board"), cost))
	}
	l.From = strings.Join(from, "; ")
}

// usualSpread is by what share a price may be off where its table does not say. Common practice, no source.
const usualSpread = 0.25

func (t *Table) spread(key string) float64 {
	if s, ok := t.Spread[key]; ok {
		return s
	}
	if s, ok := t.Spread["other"]; ok {
		return s
	}
	return usualSpread
}
