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

// Level returns a table that comes with the program. Errors: an unknown name.
func Level(name string) (*Table, error) {
	if !slices.Contains(Levels(), name) {
		return nil, fmt.Errorf("no price level %q; there are %s, or a file of your own", name, strings.Join(Levels(), ", "))
	}
	data, err := files.ReadFile("prices/" + name + ".toml")
	if err != nil {
		return nil, err
	}
	return Read(bytes.NewReader(data), name)
}

// most is the highest price read and the largest file, bytes.
const (
	most    = 1e9
	maxFile = 1 << 20
)

// Read reads and checks a price table. The name is used in messages only.
//
// Errors: text that is no TOML, an unknown key, a price below 0 or past 1e9, a
// table without a price for other woods.
func Read(r io.Reader, name string) (*Table, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(data) > maxFile {
		return nil, fmt.Errorf("%s: is larger than 1 MB, so it is no price table", name)
	}
	t := &Table{}
	d := toml.NewDecoder(bytes.NewReader(bytes.TrimPrefix(data, []byte("\uFEFF"))))
	d.DisallowUnknownFields()
	if err := d.Decode(t); err != nil {
		why, _, _ := strings.Cut(err.Error(), "\n")
		return nil, fmt.Errorf("%s: no price table (%s); accepted: name, about, [wood], [item] and [spread] with numbers", name, why)
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
				return fmt.Errorf("%s: %s.%s: %g is out of range; accepted: 0 to %g", name, part.key, k, v, part.top)
			}
		}
	}
	if _, ok := t.Wood["other"]; !ok {
		return fmt.Errorf(`%s: wood.other: is missing; accepted: the price of a cubic metre of woods that are not named`, name)
	}
	return nil
}
