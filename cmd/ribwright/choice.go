package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/layout"
)

// choice is what the flags say of which patterns and sheets are printed.
type choice struct {
	verb   string // whose flags they are
	only   string
	sheets string
	most   int
	ranges []span // of sheets; none for all
}

// span is a run of sheet numbers; to is 0 for all that follow.
type span struct{ from, to int }

// newChoice adds the flags of what to print to a verb's.
func newChoice(f *pflag.FlagSet) *choice {
	c := &choice{}
	f.StringVar(&c.only, "only", "", "`patterns` to print, as mortises,stems,rib-F3; all when left out")
	f.StringVar(&c.sheets, "sheets", "", "`numbers` of the sheets to print, as 1-4,9; all when left out")
	f.IntVar(&c.most, "max-sheets", 200, "refuse to print more sheets than this")
	return c
}

const rangeForm = "sheet numbers and ranges, as 1-4,9 or 12-"

// check reads the sheet numbers and finds what is wrong before any work.
func (c *choice) check(v verb) error {
	c.verb = v.name
	if c.most < 1 {
		return usageError{fmt.Errorf("%s: --max-sheets: %d prints nothing; accepted: 1 or more", v.name, c.most)}
	}
	if c.sheets == "" {
		return nil
	}
	for _, part := range strings.Split(c.sheets, ",") {
		from, to, isRange := strings.Cut(strings.TrimSpace(part), "-")
		s := span{}
		var err error
		if s.from, err = strconv.Atoi(from); err == nil {
			switch {
			case !isRange:
				s.to = s.from
			case to != "":
				s.to, err = strconv.Atoi(to)
			}
		}
		if err != nil || s.from < 1 || s.to != 0 && s.to < s.from || isRange && to == "0" {
			return usageError{fmt.Errorf("%s: --sheets: %q is not understood; accepted: %s", v.name, part, rangeForm)}
		}
		c.ranges = append(c.ranges, s)
	}
	return nil
}

// patterns keeps the drawings that are asked for by their names, or by the name
// of their kind.
func (c *choice) patterns(all []layout.Drawing) ([]layout.Drawing, error) {
	if c.only == "" {
		return all, nil
	}
	wanted := map[string]bool{}
	for _, name := range strings.Split(strings.ToLower(c.only), ",") {
		name = strings.TrimSpace(name)
		found := false
		for _, d := range all {
			if strings.ToLower(d.Name) == name || kind(d.Name) == name {
				wanted[d.Name], found = true, true
			}
		}
		if !found {
			return nil, usageError{fmt.Errorf("%s: --only: no pattern %q; accepted: %s", c.verb, name, kinds(all))}
		}
	}
	return slices.DeleteFunc(slices.Clone(all), func(d layout.Drawing) bool { return !wanted[d.Name] }), nil
}

// kind names what a pattern is one of: rib-F3 is one of ribs.
func kind(name string) string {
	if one, _, isOne := strings.Cut(name, "-"); isOne {
		return one + "s"
	}
	return name
}

// kinds lists the names that may be asked for.
func kinds(all []layout.Drawing) string {
	var out []string
	single := ""
	for _, d := range all {
		if k := kind(d.Name); !slices.Contains(out, k) {
			out = append(out, k)
		}
		if kind(d.Name) != d.Name && single == "" {
			single = ", or a single one, as " + d.Name
		}
	}
	return strings.Join(out, ", ") + single
}

// pick keeps the sheets that are asked for, each once, in the order of the set.
func (c *choice) pick(all []layout.Sheet) ([]layout.Sheet, error) {
	if len(c.ranges) == 0 {
		return all, nil
	}
	wanted := make([]bool, len(all))
	for _, s := range c.ranges {
		if s.to == 0 {
			s.to = max(s.from, len(all))
		}
		if s.to > len(all) {
			return nil, usageError{fmt.Errorf("%s: --sheets: there is no sheet %d; accepted: 1 to %d", c.verb, s.to, len(all))}
		}
		for i := s.from; i <= s.to; i++ {
			wanted[i-1] = true
		}
	}
	var out []layout.Sheet
	for i, s := range all {
		if wanted[i] {
			out = append(out, s)
		}
	}
	return out, nil
}
