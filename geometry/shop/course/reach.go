package course

import (
	"slices"
	"strings"
)

// set is what is taken out of a course: before it and after it.
type set struct{ before, later map[string]bool }

// newSet has what any teacher prepares: the box is rigged once for all.
func newSet() set { return set{map[string]bool{rigging: true}, map[string]bool{}} }

func (s set) has(name string) bool { return s.before[name] || s.later[name] }

// offer is something that can be taken out of a course as one.
type offer struct {
	names []string
	later bool
}

// offers lists them in the order in which they are taken: first what a course is not there
// for, last what it is. Our own choice.
func offers(all []Builder) []offer {
	coats, oil := named(all, coating), append(named(all, oiling), smoothing, loops)
	return []offer{
		{[]string{firstWater, outfits}, true},
		{[]string{patterns}, false},
		{[]string{sawing, scarfing, planing}, false},
		{[]string{fitGlue, fitShape, fitting}, true},
		{[]string{forms}, false},
		{[]string{blocks, gluing}, false},
		{[]string{ends}, false},
		{[]string{mortises}, false},
		{coats, true},
		{[]string{skin}, true},
		{oil, true},
	}
}

// named lists the operations whose names begin alike.
func named(all []Builder, begin string) (out []string) {
	for _, b := range all {
		for _, o := range b.Work {
			if strings.HasPrefix(o.Name, begin) && !slices.Contains(out, o.Name) {
				out = append(out, o.Name)
			}
		}
	}
	return out
}

// reach finds what is taken out so that the days are enough: one offer after the other until
// they are, and then each is given back that is not needed after all. Where all offers are not
// enough, all are taken.
func reach(all []Builder, t Terms) (set, error) {
	list := offers(all)
	enough := 0
	for fit := false; !fit; {
		if enough == len(list) {
			return setOf(list), nil
		}
		enough++
		var err error
		if fit, err = fits(all, t, list[:enough]); err != nil {
			return set{}, err
		}
	}
	list = list[:enough]
	for i := 0; i < len(list); {
		less := slices.Delete(slices.Clone(list), i, i+1)
		fit := closed(all, setOf(less))
		if fit {
			var err error
			if fit, err = fits(all, t, less); err != nil {
				return set{}, err
			}
		}
		if fit {
			list = less
		} else {
			i++
		}
	}
	return setOf(list), nil
}

func setOf(list []offer) set {
	s := newSet()
	for _, o := range list {
		for _, n := range o.names {
			if o.later {
				s.later[n] = true
			} else {
				s.before[n] = true
			}
		}
	}
	return s
}

// fits reports whether the days are enough without some parts.
func fits(all []Builder, t Terms, without []offer) (bool, error) {
	s := shopOf(all, t, setOf(without))
	if s.days(s.Bound()) > t.Days {
		return false, nil
	}
	found, err := s.plan(t)
	return err == nil && s.days(found.End) <= t.Days, err
}

// closed reports whether nothing that is prepared waits for work of the course, and nothing of
// the course for what is left.
func closed(all []Builder, s set) bool {
	for _, b := range all {
		there := map[string]bool{}
		for _, o := range b.Work {
			there[o.Name] = true
		}
		for _, o := range b.Work {
			for _, a := range o.After {
				if there[a.Name] && (s.before[o.Name] && !s.before[a.Name] || s.later[a.Name] && !s.later[o.Name]) {
					return false
				}
			}
		}
	}
	return true
}

// parts sums up what is taken out, in the order of the build.
func (s set) parts(all []Builder) (before, later []Part) {
	sum := func(in map[string]bool) (out []Part) {
		for _, b := range all {
			for _, o := range b.Work {
				if !in[o.Name] {
					continue
				}
				i := slices.IndexFunc(out, func(p Part) bool { return p.Name == o.Name })
				if i < 0 {
					i, out = len(out), append(out, Part{Name: o.Name})
				}
				if p := &out[i]; o.Name == rigging {
					p.Hours, p.Practiced = max(p.Hours, o.Hours), max(p.Practiced, o.Practiced)
				} else {
					p.Hours, p.Practiced = p.Hours+o.Hours, p.Practiced+o.Practiced
				}
			}
		}
		return out
	}
	return sum(s.before), sum(s.later)
}
