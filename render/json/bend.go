package json

import (
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/edgeset"
	"ribwright/geometry/trial/pushed"
)

// Bend gathers a report of bending, the members taken out and what comes of it with
// the ribs set as each trial says; miss is by how much every rib of the trial "off"
// stands wide of the neutral set, mm. Forces are in N, stresses in N/mm2 (_mpa);
// changes of beam are of the whole width.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Bend(r *bend.Report, out *balance.Without, trials []balance.Trial, alone []balance.Band, miss float64) (Object, error) {
	d, g := r.Frame.Design, r.Gunwale
	var why any
	if r.Boat.Why != nil {
		why = r.Boat.Why.Text
	}
	return of(d, Object{
		{"pass", r.Findings.Passes()},
		{"method", d.Bending.Method.String()},
		{"findings", each(r.Findings, bendFinding)},
		{"gunwale", Object{
			{"plies", d.Gunwale.Plies}, {"glued", d.Gunwale.Glued}, {"ply_mm", fixed(g.Ply)},
			{"tightest_radius_mm", fixed(g.Radius)}, {"tightest_station_mm", fixed(g.At)}, {"form_radius_mm", fixed(g.Form)},
			{"springback_percent", fixed(100 * g.Back)}, {"ply_bending_mpa", fixed(g.PlyBend)},
			{"rest_station_mm", fixed(g.Rest.X)}, {"rest_plan_mpa", fixed(g.Rest.Plan)}, {"rest_edge_set_mpa", fixed(g.Rest.Edge)},
		}},
		{"edge_set", heldEdgeSet(r.EdgeSet)},
		{"ribs", upTo(len(r.Ribs), func(i int) Object { return bentRib(r, i) })},
		{"first_rib", Object{
			{"rib", r.Ribs[r.TestRib()].Name},
			{"springback_by_free_width", each(r.Test, func(s bend.Sprung) Object {
				return Object{{"free_width_mm", fixed(s.Width)}, {"springback_percent", fixed(100 * s.Back)}}
			})},
		}},
		{"mortises", each(r.Slots, holeIn("rib"))},
		{"gunwale_bolts", each(r.Bolted, holeIn("of"))},
		{"laminated_stems", each(r.Stems, func(s bend.Stem) Object {
			return Object{{"end", s.End}, {"ply_mm", fixed(s.Ply)}, {"form_radius_mm", fixed(s.Form)}}
		})},
		{"without", without(out, promised(trials), alone)},
		{"unsettled", each(promised(trials).Causes, unsettled)},
		{"no_neutral_set", why},
		{"trials", each(trials, func(t balance.Trial) Object { return bentTrial(r, out, t, miss) })},
	}...)
}

// holeIn tells what a hole leaves of the gunwale; whose it is stands under a key.
func holeIn(whose string) func(bend.Hole) Object {
	return func(h bend.Hole) Object {
		return Object{{whose, h.Of}, {"modulus_left_plan_percent", fixed(100 * h.Flat)},
			{"modulus_left_edge_percent", fixed(100 * h.Tall)}, {"rest_mpa", fixed(h.Stress)}}
	}
}

// heldEdgeSet tells of a sprung edge-set; null without one. Changes of the profile are
// upward positive.
func heldEdgeSet(e *edgeset.Report) any {
	if e == nil {
		return nil
	}
	ends := func(p edgeset.Pair) Object { return Object{{"bow", fixed(p[1])}, {"stern", fixed(p[0])}} }
	rest := func(r *edgeset.Rest) Object {
		return Object{{"sheer_mm", ends(r.Sheer)}, {"rocker_mm", ends(r.Rocker)}, {"depth_mm", fixed(r.Depth)},
			{"keel_mpa", fixed(r.Keel / e.KeelModulus)}, {"foot_n", fixed(r.Thrust)}, {"rib_pull_n", fixed(r.Pull)}}
	}
	return Object{
		{"moment_n_m", ends(edgeset.Pair{e.Moment[0] / 1000, e.Moment[1] / 1000})}, {"feet_loose", rest(e.Loose)},
		{"feet_joined", Object{{"ends_turn_ribs_spread", rest(e.Free)}, {"ends_turn", rest(e.Usual)}, {"ends_fast", rest(e.Fast)}}},
	}
}

func bendFinding(f finding.Finding) Object {
	return Object{
		{"about", f.About}, {"verdict", f.Verdict.String()}, {"pass", f.Verdict.Passes()}, {"value", fixed(f.Value)},
		{"limit", fixed(f.Limit)}, {"unit", f.Unit}, {"margin_percent", fixed(100 * f.Margin())}, {"cure", f.Cure}, {"standing", f.Standing},
	}
}

// bentRib tells of one rib and its bends; a radius is null when the piece is straight.
func bentRib(r *bend.Report, i int) Object {
	rib, from := r.Ribs[i], r.Frame.Ribs[i]
	relax, hot := none, none
	if rib.Relax > 0 {
		relax = math.Round(rib.Relax) // no finer than a free rib can be set
	}
	if rib.Hot > 0 {
		hot = rib.Hot
	}
	return Object{
		{"rib", rib.Name}, {"station_mm", fixed(from.Station)}, {"width_mm", fixed(2 * from.Section.HalfBreadth)},
		{"relax_to_mm", fixed(relax)}, {"hot_width_mm", fixed(hot)}, {"wider_for_a_hundredth_of_springback_mm", fixed(rib.Point)}, {"stiffness_n_per_mm", fixed(rib.Stiff)}, {"push_n", fixed(rib.Push)},
		{"rest_mpa", fixed(rib.Stress)}, {"steam_minutes", fixed(math.Round(rib.Minutes))},
		{"arcs", each(rib.Arcs, func(a bend.Arc) Object {
			return Object{
				{"name", a.Name}, {"radius_mm", fixed(a.Radius)}, {"relaxed_radius_mm", fixed(a.Free)}, {"form_radius_mm", fixed(a.Form)},
				{"over_bend_deg", fixed(a.Over * 180 / math.Pi)},
				{"radius_over_thickness", fixed(a.Ratio)}, {"form_radius_over_thickness", fixed(a.OnForm)},
				{"outer_strain_percent", fixed(100 * a.Outer)}, {"inner_strain_percent", fixed(100 * a.Inner)},
			}
		})},
		{"pushed_in", loose(rib.Pushed)},
	}
}

// loose tells of a rib that is only pushed into its mortises: null where it finds no
// rest. Forces are those of dry wood on one gunwale.
func loose(p pushed.Rib) any {
	if p.Why != nil {
		return nil
	}
	head := func(h pushed.Head) Object {
		return Object{
			{"flare_deg", deg(h.Flare)}, {"off_mm", fixed(h.Off().By)}, {"least_radius_mm", fixed(h.Least)},
			{"outside_mm", fixed(h.Out.By)}, {"outside_at_mm", fixed(h.Out.At)}, {"inside_mm", fixed(h.In.By)}, {"inside_at_mm", fixed(h.In.At)},
			{"stringers_moved_mm", as[fixed](h.Moved...)}, {"push_n", fixed(h.Push)}, {"lift_n", fixed(h.Lift)},
		}
	}
	return Object{{"hinged", head(p.Hinged)}, {"clamped", head(p.Clamped)}}
}

func bentTrial(r *bend.Report, out *balance.Without, t balance.Trial, miss float64) Object {
	if t.Set != "off" {
		miss = 0
	}
	fit := func(i int) fixed {
		if i < len(r.Boat.Fit) {
			return tenth(r.Boat.Fit[i])
		}
		return 0
	}
	return Object{
		{"ribs_set", t.Set},
		{"wide_of_neutral_mm", fixed(miss)},
		{"cross_pieces", upTo(len(r.Frame.Thwarts), func(i int) Object {
			s := r.Frame.Thwarts[i]
			return Object{{"code", balance.Code(i)}, {"name", s.Name}, {"station_mm", fixed(s.At)},
				{"force_n", fixed(t.In.Struts[i])}, {"force_range_n", ranged(t.Band.Forces[i])},
				{"longer_than_drawn_mm", fit(i)}, {"out", out.Struts(i)}}
		})},
		{"ribs", upTo(len(r.Frame.Ribs), func(i int) Object {
			rib := r.Frame.Ribs[i]
			return Object{{"rib", rib.Name}, {"push_n", fixed(t.In.Ribs[i])},
				{"beam_off_design_mm", fixed(t.Off(rib.Station))}, {"beam_moved_mm", fixed(t.Moved(rib.Station))},
				{"beam_moved_range_mm", ranged(t.Band.At(rib.Station))}}
		})},
	}
}
