// Package finding is what the program found of a boat or of an outfit: in plain words
// or as a figure beside its limit, with how firm the rule behind it is, how grave it
// is and what would mend it.
package finding

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Finding is one thing that was found.
type Finding struct {
	About    string   // "freeboard", "ribs F3-F5, bilge"
	Text     string   // the figures and what they mean, without a stop; "" where verdict and measure say it all
	Standing Standing // of the rule behind it
	Verdict  Verdict
	Measure         // the zero Measure where nothing was measured
	Cure     string // what costs least to mend it, or to spare work; "" for none. Text may say it too.
	Mend     Change // another value for one measure of the boat that mends it; the zero Change for none
}

// Change is another value for one measure of a boat.
type Change struct {
	Measure string  // by its name, as "seat height"
	To      float64 // in the measure's unit
	Says    string  // what to do, as "lower the seats by 30 mm"
}

// IsSet reports whether there is a change.
func (c Change) IsSet() bool { return c.Measure != "" }

// String says the finding in one line.
func (f Finding) String() string { return f.About + ": " + f.Words() }

// Words are the text, or what the verdict and the measure come to, with the cure where
// the text does not say it.
func (f Finding) Words() string {
	s := f.Text
	if s == "" {
		s = f.Verdict.String()
		if f.IsSet() {
			s += ", " + f.Measure.words()
		}
	}
	if !strings.Contains(f.Text, f.Cure) {
		s += "; " + f.Cure
	}
	return s
}

// Measure is a figure beside its limit, in one unit.
type Measure struct {
	Value, Limit float64
	Unit         string // "mm", "N/mm2", "radius/thickness"; "" for a bare number
	AtMost       bool   // the value may be at most the limit; else at least
}

// words are the figure with its limit, each with its unit.
func (m Measure) words() string {
	bound := "at least"
	if m.AtMost {
		bound = "at most"
	}
	if m.Unit == "radius/thickness" {
		return fmt.Sprintf("radius over thickness %s, %s %s", plain(m.Value), bound, plain(m.Limit))
	}
	return strings.ReplaceAll(fmt.Sprintf("%s %s, %s %s %[2]s", plain(m.Value), m.Unit, bound, plain(m.Limit)), " ,", ",")
}

// plain is a figure to three places that count, without powers of ten.
func plain(v float64) string {
	three, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64) // what was written is read
	return strconv.FormatFloat(three, 'f', -1, 64)
}

// IsSet reports whether there is a measure.
func (m Measure) IsSet() bool { return m != Measure{} }

// Margin returns the room to the limit as a share: of the limit where the value must
// reach it, of the value where it must stay below. It is negative past the limit, and
// 0 without a measure.
func (m Measure) Margin() float64 {
	switch {
	case !m.IsSet():
		return 0
	case m.AtMost:
		return over(m.Limit, m.Value)
	}
	return over(m.Value, m.Limit)
}

// over is by how much a lies over b, as a share of b's size.
func over(a, b float64) float64 {
	if b < 0 {
		return 1 - a/b
	}
	return a/b - 1
}

// List is findings in the order in which they were made. The zero List is empty.
type List []Finding

// Say adds a plain fact.
func (l *List) Say(about string, s Standing, format string, args ...any) {
	l.Judge(Noted, about, s, format, args...)
}

// Warn adds a danger that comes with the thing and that its user must know.
func (l *List) Warn(about string, s Standing, format string, args ...any) {
	l.Judge(Caution, about, s, format, args...)
}

// Judge adds a finding with its verdict.
func (l *List) Judge(v Verdict, about string, s Standing, format string, args ...any) {
	*l = append(*l, Finding{About: about, Text: fmt.Sprintf(format, args...), Standing: s, Verdict: v})
}

// Passes reports whether every finding passes.
func (l List) Passes() bool {
	return !slices.ContainsFunc(l, func(f Finding) bool { return !f.Verdict.Passes() })
}

// Dangers returns the findings of danger, which are shown first, in their order.
func (l List) Dangers() List { return l.only(true) }

// Others returns the findings that are no dangers, in their order.
func (l List) Others() List { return l.only(false) }

func (l List) only(danger bool) List {
	var out List
	for _, f := range l {
		if f.Verdict.Danger() == danger {
			out = append(out, f)
		}
	}
	return out
}

// Sorted returns all findings, dangers first.
func (l List) Sorted() List { return append(l.Dangers(), l.Others()...) }
