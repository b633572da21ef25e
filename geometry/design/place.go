package design

import (
	"reflect"
	"strconv"
	"strings"
)

// place is a key or a table of the file with the Go type behind it.
type place struct {
	name string       // as a builder says it: "hull.section.flare"
	path string       // with the number of its table, from 0: "hull.section.1.flare"
	typ  reflect.Type // without the pointer of a table that may be left out
}

// wholeFile is the place that all others lie in.
func wholeFile() place { return place{typ: reflect.TypeFor[Design]()} }

// child returns the place of a key in a table. An unknown key, or one in
// something that is no table, gives a place with its name and no type. Capitals
// count: a second spelling of a key would win over the first unseen.
func (at place) child(part string) place {
	out := place{name: joined(at.name, spelled(part)), path: joined(at.path, part)}
	table := tableOf(at.typ)
	for i := range numFields(table) {
		f := table.Field(i)
		if tag, _, _ := strings.Cut(f.Tag.Get("toml"), ","); tag == part {
			out.typ = f.Type
			if out.typ.Kind() == reflect.Pointer {
				out.typ = out.typ.Elem()
			}
		}
	}
	return out
}

// numbered returns the place of the i-th item of a list.
func (at place) numbered(i int) place {
	return place{name: at.name, path: at.path + "." + strconv.Itoa(i), typ: at.typ.Elem()}
}

// isTables reports whether the place is a list of tables, begun with [[ ]].
func (at place) isTables() bool {
	return at.typ.Kind() == reflect.Slice && tableOf(at.typ) != nil
}

func joined(table, key string) string {
	if table == "" {
		return key
	}
	return table + "." + key
}

// spelled quotes a key that a file could only hold in quotes.
func spelled(part string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_'
	}
	if part != "" && strings.TrimFunc(part, plain) == "" {
		return part
	}
	return strconv.Quote(part)
}

// unnumbered turns a path into a name: "hull.section.1.flare" into
// "hull.section.flare", for the line of the message tells which section.
func unnumbered(path string) string {
	var keep []string
	for _, part := range strings.Split(path, ".") {
		if _, err := strconv.Atoi(part); err != nil {
			keep = append(keep, part)
		}
	}
	return strings.Join(keep, ".")
}
