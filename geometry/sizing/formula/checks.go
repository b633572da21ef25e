package formula

import (
	"strings"

	"ribwright/geometry/finding"
)

// Check is how one check of a file came out.
type Check struct {
	Name   string
	At     Place
	Passed bool
	Sized  bool    // the check compares two sizes, so the fields below count
	Value  float64 // the left side
	Limit  float64 // the right side
	Dim    Dim     // of both
	AtMost bool    // the value may be at most the limit; else at least
	Reason string
}

// Margin returns how far the value is on the right side of its limit; negative
// when the check failed. Without sizes, 1 or -1.
func (v Check) Margin() float64 {
	switch {
	case v.Sized && v.AtMost:
		return v.Limit - v.Value
	case v.Sized:
		return v.Value - v.Limit
	case v.Passed:
		return 1
	}
	return -1
}

// Finding tells how it came out, with its numbers in mm, kg, s and radians.
func (v Check) Finding() finding.Finding {
	f := finding.Finding{About: v.Name, Text: "holds", Verdict: finding.Holds}
	if !v.Passed {
		f.Text, f.Verdict = "does not hold; "+v.Reason, finding.Missed
	}
	if !v.Sized {
		return f
	}
	word := "at least"
	if v.AtMost {
		word = "at most"
	}
	is, wanted := beside(v.Value, v.Limit, v.Dim)
	f.Text = is + ", wanted " + word + " " + wanted + "; " + v.Reason
	f.Measure = finding.Measure{Value: v.Value, Limit: v.Limit, Unit: v.Dim.unit(), AtMost: v.AtMost}
	return f
}

// Checks works out every check of the file, in its order.
//
// Errors: *wording.Fault for a check that has no answer.
func (r *Run) Checks() (out []Check, err error) {
	defer catch(&err)
	all := make([]Check, 0, len(r.p.checks))
	for _, s := range r.p.checks {
		r.name = s.name
		v := Check{Name: s.name, At: s.at, Passed: r.eval(s.body).True(), Reason: r.filled(s)}
		if f := s.body.call; f != nil && strings.ContainsAny(f.name, "<>") {
			v.Sized, v.Dim, v.AtMost = true, s.body.args[0].kind.Dim, f.name[0] == '<'
			v.Value, v.Limit = r.eval(s.body.args[0]).Num, r.eval(s.body.args[1]).Num
		}
		all = append(all, v)
	}
	return all, nil
}
