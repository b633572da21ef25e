package cost

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"

	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
)

// known refuses keys that no bill has, with the nearest one that some bill has: a price under
// a misspelled key would count for nothing. A wood that is like none of the program's is left
// to designs that have woods of their own. It names woods as the program does.
func (t *Table) known(data []byte, name string) error {
	mixed, err := Level("mixed")
	if err != nil {
		return err
	}
	fault := func(part, key, format string, args ...any) error {
		return &wording.Fault{File: name, Line: lineOf(data, part, key), Key: part + "." + key, Text: fmt.Sprintf(format, args...)}
	}
	woods := map[string]float64{}
	for _, k := range slices.Sorted(maps.Keys(t.Wood)) {
		as := asWood(k)
		if as == "" {
			_, like := timber.Lookup(k)
			return fault("wood", k, "%s", like)
		}
		if _, twice := woods[as]; twice {
			return fault("wood", k, "%s is given twice", as)
		}
		woods[as] = t.Wood[k]
	}
	t.Wood = woods
	items := slices.Sorted(maps.Keys(mixed.Item))
	for _, part := range []struct {
		name  string
		given map[string]float64
		keys  []string
	}{{"item", t.Item, items}, {"spread", t.Spread, append([]string{"wood", "other"}, items...)}} {
		for _, k := range slices.Sorted(maps.Keys(part.given)) {
			switch near := wording.Nearest(k, part.keys); {
			case slices.Contains(part.keys, k):
			case near == "":
				return fault(part.name, k, "no such key; accepted: %s", strings.Join(part.keys, ", "))
			default:
				return fault(part.name, k, "no such key; the nearest known key is %s", near)
			}
		}
	}
	return nil
}

// asWood is the name of a wood as the program has it; a new name as it is, and "" for one that
// is a slip of a known one, or a part of it.
func asWood(key string) string {
	if s, err := timber.Lookup(key); err == nil {
		return s.Name
	}
	for _, s := range timber.All() {
		if key != "other" && (wording.Edits(key, s.Name) <= max(1, len(key)/4) || strings.Contains(strings.ToLower(s.Name), strings.ToLower(key))) {
			return ""
		}
	}
	return key
}

// lineOf is the line on which a key of a table stands, 0 where it is not found.
func lineOf(data []byte, table, key string) int {
	var p unstable.Parser
	p.Reset(data)
	var in []string
	for p.NextExpression() {
		e := p.Expression()
		var path []string
		at := 0
		for it := e.Key(); it.Next(); {
			path, at = append(path, string(it.Node().Data)), int(it.Node().Raw.Offset)
		}
		if e.Kind != unstable.KeyValue {
			in = path
		} else if slices.Equal(slices.Concat(in, path), []string{table, key}) {
			return 1 + bytes.Count(data[:at], []byte("\n"))
		}
	}
	return 0
}

// notRead is why a text is no price table, with the line and the key where these are known.
func notRead(err error, name string) error {
	f := &wording.Fault{File: name, Text: "accepted: name, about, [wood], [item] and [spread] with numbers"}
	at := func(e *toml.DecodeError) { f.Line, _ = e.Position(); f.Key = strings.Join(e.Key(), ".") }
	switch e := err.(type) {
	case *toml.DecodeError:
		if at(e); f.Key != "" {
			f.Text = "is of the wrong kind; " + f.Text
			break
		}
		f.Text = fmt.Sprintf("no price table (%s); %s", strings.TrimPrefix(e.Error(), "toml: "), f.Text)
	case *toml.StrictMissingError:
		at(&e.Errors[0])
		f.Text = "no such key; " + f.Text
	default:
		why, _, _ := strings.Cut(err.Error(), "\n")
		f.Text = fmt.Sprintf("no price table (%s); %s", why, f.Text)
	}
	return f
}
