package edition

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/marks"
	"ribwright/geometry/wording"
)

// Cut is a piece, or several that are made as one, that is cut already.
type Cut struct {
	Name  string   // as people call it
	parts []string // of the marks
}

// sort is pieces that go by one word: the parts of their marks begin so. Those that count
// as one piece have no numbers.
type sort struct {
	word  string
	one   bool
	parts []string
}

// sorts are what may be cut.
var sorts = []sort{
	{"gunwales", true, []string{"gunwale", "mortise ", "block "}},
	{"stems", false, []string{"bow stem", "stern stem"}},
	{"breasthooks", false, []string{"bow breasthook", "stern breasthook"}},
	{"thwarts", false, []string{"thwart "}},
	{"seats", false, []string{"seat "}},
	{"ribs", false, []string{"rib "}},
	{"keel", true, []string{"keel"}},
	{"stringers", false, []string{"stringer "}},
	{"floors", false, []string{"floor "}},
	{"footbraces", false, []string{"footbrace "}},
	{"backrests", false, []string{"backrest "}},
	{"skin", true, []string{"skin"}},
	{"outwales", true, []string{"outwale"}},
	{"keel-strip", true, []string{"keel strip"}},
}

// ParseCut reads which parts of an edition are cut: words of sorts with commas between
// them, "stems,ribs:A1-A6,gunwales". Behind a colon stands which of the sort: one, as A1,
// 2 or bow, or from one to another as they follow each other in the boat.
//
// Errors: a sort or one of it that the edition does not have, with what it has.
func ParseCut(text string, e *Edition) ([]Cut, error) {
	var out []Cut
	for _, word := range strings.Split(text, ",") {
		name, which, some := strings.Cut(strings.ToLower(strings.TrimSpace(word)), ":")
		i := slices.IndexFunc(sorts, func(s sort) bool {
			return name != "" && (s.word == name || strings.TrimSuffix(s.word, "s") == name)
		})
		if i < 0 {
			return nil, fmt.Errorf("%q is no part that is cut; accepted: %s", wording.Clip(word, 40), sortsOf(e))
		}
		s := sorts[i]
		all := e.parts(s.parts)
		switch {
		case len(all) == 0:
			return nil, fmt.Errorf("this boat has no %s; accepted: %s", s.word, sortsOf(e))
		case s.one && some:
			return nil, fmt.Errorf("%s counts as one; leave out what stands behind the colon", s.word)
		case s.one:
			out = append(out, Cut{s.word, all})
			continue
		}
		if some {
			var err error
			if all, err = chosen(all, which, s.word); err != nil {
				return nil, err
			}
		}
		for _, part := range all {
			out = append(out, Cut{part, []string{part}})
		}
	}
	for i, c := range out {
		if j := slices.IndexFunc(out[:i], func(o Cut) bool { return o.Name == c.Name }); j >= 0 {
			return nil, fmt.Errorf("%s is named twice; name it once", c.Name)
		}
	}
	return out, nil
}

// parts lists the parts of the marks that begin with any of some words, in order.
func (e *Edition) parts(begin []string) []string {
	var out []string
	for _, m := range e.Marks {
		if m.Part == "rib peg" || slices.Contains(out, m.Part) {
			continue
		}
		if slices.ContainsFunc(begin, func(b string) bool {
			return m.Part == b || strings.HasSuffix(b, " ") && strings.HasPrefix(m.Part, b)
		}) {
			out = append(out, m.Part)
		}
	}
	return out
}

// sortsOf names what the edition has.
func sortsOf(e *Edition) string {
	var out []string
	for _, s := range sorts {
		all := e.parts(s.parts)
		switch {
		case len(all) == 0:
		case s.one || len(all) == 1:
			out = append(out, s.word)
		default:
			out = append(out, fmt.Sprintf("%s, or %s:%s-%s", s.word, s.word, short(all[0]), short(all[len(all)-1])))
		}
	}
	return strings.Join(out, "; ")
}

// short is what one of a sort is called behind a colon: "A3" of "rib A3", "bow" of "bow stem".
func short(part string) string {
	first, second, _ := strings.Cut(part, " ")
	if first == "bow" || first == "stern" {
		return first
	}
	return second
}

// chosen are those of a sort from one to another.
func chosen(all []string, which, sort string) ([]string, error) {
	from, to, several := strings.Cut(which, "-")
	if !several {
		to = from
	}
	at := func(name string) int {
		return slices.IndexFunc(all, func(p string) bool { return strings.EqualFold(short(p), strings.TrimSpace(name)) })
	}
	i, j := at(from), at(to)
	if i < 0 || j < 0 {
		return nil, fmt.Errorf("there is no %s among the %s of the older edition; accepted: %s to %s", strconv.Quote(wording.Clip(which, 20)), sort, short(all[0]), short(all[len(all)-1]))
	}
	return all[min(i, j) : max(i, j)+1], nil
}

// of reports whether the mark is on the piece.
func (c Cut) of(n marks.Name) bool { return slices.Contains(c.parts, n.Part) }
