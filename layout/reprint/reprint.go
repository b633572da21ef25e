// Package reprint says which sheets of an older edition, printed already, still serve
// for a new one.
package reprint

import (
	"slices"
	"strings"

	"ribwright/geometry/edition"
	"ribwright/layout/tile"
)

// Use is what becomes of a piece or a sheet that is printed.
type Use int

// The uses.
const (
	Keep    Use = iota // equal in ink, but for a sheet's title block
	Serves             // its lines moved by less than matters on wood; the words on it are the older edition's
	Reprint            // out of date, or not printed yet
)

// Piece is a piece of the new set.
type Piece struct {
	tile.Fate
	Use
}

// Set is what of a printed set still serves.
type Set struct {
	*tile.Since
	All []Piece // of the new set, in its order
}

// Of compares two sets with what moved between their designs. A pattern of which no mark
// moved by more than its tolerance serves as it is, in all its pieces together; of any
// other only the pieces that are equal do.
func Of(s *tile.Since, c *edition.Comparison) Set {
	out := Set{Since: s}
	fine := map[string]bool{} // by pattern: whether nothing on it matters
	for _, f := range s.Pieces {
		ok, known := fine[f.Pattern]
		if !known {
			ok = serves(f.Pattern, f.Title, c)
		}
		fine[f.Pattern] = ok && f.Follows
	}
	for _, f := range s.Gone {
		fine[f.Pattern] = false
	}
	for _, f := range s.Pieces {
		p := Piece{f, Reprint}
		switch {
		case f.Same:
			p.Use = Keep
		case fine[f.Pattern]:
			p.Use = Serves
		}
		out.All = append(out.All, p)
	}
	return out
}

// Sheets lists the numbers of the new set's sheets of a use. The first sheet, whose words
// tell of the whole set, is always of those to print.
func (s Set) Sheets(u Use) []int {
	if u == Keep {
		return s.Kept
	}
	var out []int
	for _, n := range s.Reprint {
		use := Reprint
		if n > 1 {
			use = Serves
			for _, p := range s.All {
				if p.Sheet == n {
					use = max(use, p.Use)
				}
			}
		}
		if use == u {
			out = append(out, n)
		}
	}
	return out
}

// Patterns lists the patterns in their order.
func (s Set) Patterns() []string {
	var out []string
	for _, p := range s.All {
		if !slices.Contains(out, p.Pattern) {
			out = append(out, p.Pattern)
		}
	}
	return out
}

// shows lists, by a pattern's name, which marks stand on it: how their part begins and,
// behind a colon, their quantity where only some of a part's do.
var shows = map[string][]string{
	"mortises": {"gunwale:stock", "gunwale:width", "gunwale:ply", "gunwale:form", "gunwale:aft", "gunwale:fore", "gunwale:scarf", "gunwale:no scarf", "gunwale:edge-set end",
		"mortise :from", "mortise :length", "mortise :width", "mortise :bevel", "mortise :head", "gunwale:bolt of", "thwart :station", "thwart :hole", "spreader :from"},
	"middle-ply":       {"gunwale", "mortise ", "block "},
	"body":             {"rib ", "hull"},
	"ribs":             {"rib "},
	"battens":          {"keel:", "stringer "},
	"stem-bow":         {"bow stem", "hull", "gunwale:height", "gunwale:tilt"},
	"stem-stern":       {"stern stem", "hull", "gunwale:height", "gunwale:tilt"},
	"stems":            {"bow stem", "stern stem", "hull", "gunwale:height", "gunwale:tilt"},
	"breasthook-bow":   {"bow breasthook"},
	"breasthook-stern": {"stern breasthook"},
	"breasthooks":      {"bow breasthook", "stern breasthook"},
}

// serves reports whether no mark on a pattern moved by more than matters. A pattern of
// ribs, a thwart or a seat shows the parts of its title or number; one that is not known
// shows all.
func serves(pattern, title string, c *edition.Comparison) bool {
	on, known := shows[pattern]
	if !known {
		on = []string{""}
	}
	sort, rest, _ := strings.Cut(pattern, "-")
	switch sort {
	case "rib", "form":
		on = ribsOf(title)
	case "thwart", "seat":
		number, _, _ := strings.Cut(rest, "-")
		on = []string{sort + " " + number + ":"}
	}
	return !slices.ContainsFunc(c.Changes, func(d edition.Change) bool {
		return d.Matters() && slices.ContainsFunc(on, func(mark string) bool {
			part, quantity, one := strings.Cut(mark, ":")
			if one && !strings.HasSuffix(part, " ") && d.Part != part {
				return false
			}
			return strings.HasPrefix(d.Part, part) && strings.HasPrefix(d.Quantity, quantity)
		})
	})
}

// ribsOf are the ribs that a title names: "Rib F3, A3" or "Form for ribs F3, A3"; all of
// them where it names none.
func ribsOf(title string) []string {
	_, names, named := strings.Cut(title, "ibs ")
	if !named {
		_, names, named = strings.Cut(title, "ib ")
	}
	if !named {
		return []string{"rib "}
	}
	var out []string
	for _, name := range strings.Split(names, ",") {
		out = append(out, "rib "+strings.TrimSpace(name)+":")
	}
	return out
}
