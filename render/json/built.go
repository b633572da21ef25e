package json

import (
	"ribwright/geometry/design"
	"ribwright/geometry/survey/built"
	"ribwright/geometry/survey/weighing"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/handwork"
	"ribwright/layout/report"
)

// Card gathers what a card asks of each rib, from midship outward, with what the drawing
// has for it, null where it has nothing. heads are the columns of the table that is filled.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Card(d *design.Design, f *built.Frame, heads []string) (Object, error) {
	return of(d, Object{{"columns", heads}, {"ribs", each(report.Outward(f.Frame.Stations()), func(i int) Object {
		drawn := func(m int) fixed { return fixed(f.Drawn(i, m)) }
		return Object{{"rib", f.Frame.Ribs[i].Name}, {"beam_mm", drawn(built.Beam)}, {"depth_mm", drawn(built.Depth)}, {"straightedge_mm", drawn(built.Depth) + fixed(f.Rail())}, {"blank_mm", drawn(built.Blank)},
			{"free_width_mm", drawn(built.Free)}, {"hot_width_mm", drawn(built.Hot)}, {"bilge_mm", drawn(built.BilgePort)}}
	})}}...)
}

// Built gathers what the measures of a frame come to; what was not measured is null or
// empty. Beam and depth off are wider and deeper with +; do is what to do, in the order of
// the ribs. Plus and minus hold nine in ten.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Built(d *design.Design, m *built.Report, do []string, w *weighing.Found, ship bool, t *afloat.Report) (Object, error) {
	head, err := headerOf(d)
	if err != nil {
		return nil, err
	}
	out := Object{{"design", head}}
	if m != nil {
		out = append(out, measuredFrame(m, do)...)
	}
	out = append(out, field{"ship", ship})
	if w != nil {
		out = append(out, field{"weighed", weighed(w)})
	}
	if t == nil {
		return append(out, field{"standing", nil}), nil
	}
	return append(out, field{"hydrostatics", hydrostatics(t.Rest)}, standing(t.Standing)), nil
}

func measuredFrame(m *built.Report, do []string) Object {
	name := func(i int) string { return m.Frame.Frame.Ribs[i].Name }
	s := m.Spring
	return Object{
		{"ribs", upTo(len(m.Ribs), func(i int) Object {
			r := m.Ribs[i]
			return Object{{"rib", name(r.Rib)}, {"line", r.Line}, {"beam_off_mm", fixed(r.Beam)}, {"depth_off_mm", fixed(r.Depth)},
				{"beam_bump_mm", fixed(r.BeamBump)}, {"depth_bump_mm", fixed(r.DepthBump)}, {"free_width_off_mm", fixed(r.Wider)}, {"verdict", r.Verdict.String()}, {"do", do[i]}}
		})},
		{"off", Object{{"beam_rms_mm", fixed(m.Off.Beam)}, {"depth_rms_mm", fixed(m.Off.Depth)}, {"bump_rms_mm", fixed(m.Off.Bump)}, {"standing", m.Off.Standing}, {"fair", m.Fair()}}},
		{"remaining", each(m.Remaining, func(r built.Remaining) Object {
			return Object{{"rib", name(r.Rib)}, {"length_mm", fixed(r.Length)}, {"blank_mm", fixed(r.Blank)}, {"longer_mm", fixed(r.Longer)},
				{"free_width_mm", fixed(r.Free)}, {"hot_width_mm", fixed(r.Hot)}, {"hot_width_plus_minus_mm", fixed(handwork.Within * r.HotOff)}}
		})},
		{"springback", Object{{"prior_percent", fixed(100 * s.Prior)}, {"prior_plus_minus_percent", fixed(100 * handwork.Within * built.BoardOff)},
			{"now_percent", fixed(100 * s.Now)}, {"plus_minus_percent", fixed(100 * handwork.Within * s.Off)}, {"next_plus_minus_percent", fixed(100 * handwork.Within * s.Next)},
			{"readings", each(s.Readings, func(r built.Reading) Object {
				return Object{{"rib", name(r.Rib)}, {"line", r.Line}, {"percent", fixed(100 * r.Back)}}
			})}}},
	}
}

func weighed(w *weighing.Found) Object {
	value := func(v weighing.Value) Object {
		return Object{{"is", v.Is}, {"plus_minus", handwork.Within * v.Off}}
	}
	out := Object{{"mass_kg", value(w.Mass)}, {"x_mm", value(w.Along)}, {"z_mm", value(w.High)}, {"gm_mm", value(w.GM)}, {"agree", !w.Disagree}}
	if w.Closed != nil {
		out = append(out, field{"gm_closed_form_mm", value(*w.Closed)})
	}
	return out
}
