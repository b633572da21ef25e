package course

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/fabric"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/shoptest"
	"ribwright/geometry/trial/bend"
)

// made is a shipped boat in the shop: its counted work, and its operations for a skill.
func made(t testing.TB, name string, change func(*design.Design)) ([]hours.Work, func(hours.Skill) []Operation) {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	b, err := bend.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	kits := shoptest.Fittings(t, f)
	p, n := shoptest.Needs(t, f, kits...)
	n.AddForms(b.Forms)
	work := hours.Count(f, p, n, kits...)
	return work, func(s hours.Skill) []Operation { return Of(b, n, work, s) }
}

// TestAllWorkOnce: the operations of a boat have all counted hours, each once, whatever the boat
// is made like, and each comes behind those that it waits for.
func TestAllWorkOnce(t *testing.T) {
	for title, change := range map[string]func(*design.Design){
		"as shipped":       nil,
		"mortises by gap":  func(d *design.Design) { d.Gunwale.Mortises = design.ByGap },
		"ribs on forms":    func(d *design.Design) { d.Bending.Method = design.OnForms },
		"kiln-dried stock": func(d *design.Design) { d.Bending.Stock = design.KilnDried },
		"no skin":          func(d *design.Design) { d.Skin.Cloth, d.Skin.Coats = 0, 0 },
	} {
		work, of := made(t, "brook", change)
		for _, s := range hours.Skills() {
			own, practiced, seen := 0.0, 0.0, map[string]bool{}
			for _, o := range of(s) {
				own, practiced = own+o.Hours, practiced+o.Practiced
				for _, a := range o.After {
					if !seen[a.Name] {
						t.Errorf("%s: %q comes before %q", title, o.Name, a.Name)
					}
				}
				if seen[o.Name] || o.Hours <= 0 {
					t.Errorf("%s: %q twice, or without work", title, o.Name)
				}
				seen[o.Name] = true
			}
			if math.Abs(own-hours.Hours(work, "", s)) > 1e-9 || math.Abs(practiced-hours.Hours(work, "", hours.Experienced)) > 1e-9 {
				t.Errorf("%s, %v: %.3f h of %.3f", title, s, own, hours.Hours(work, "", s))
			}
		}
	}
}

// TestWaits: how long work waits, by the clock, against what builders hold to: glue overnight
// and a day more before it is bent; the first rib and all ribs overnight before pegs, two nights
// before glue; a day for each coat of oil; nylon overnight; a week before the water (common
// practice, no source).
func TestWaits(t *testing.T) {
	_, of := made(t, "brook", func(d *design.Design) { d.Skin.Fiber = design.Fiber(fabric.Nylon) })
	least := func(name, before string) float64 {
		for _, o := range of(hours.Average) {
			for _, a := range o.After {
				if o.Name == name && a.Name == before {
					return a.Hours
				}
			}
		}
		return -1
	}
	for _, c := range []struct {
		name, before string
		from, to     float64
	}{{setup, gluing, 36, 36}, {mortises, gluing, 12, 12}, {ribs, firstRib, 12, 60}, {pegging, ribs, 12, 36}, {oiling + "2", oiling + "1", 24, 24}, {skin, oiling + "2", 24, 24},
		{skin, ribs, 72, 240}, {coating + "1", skin, 12, 12}, {firstWater, coating + "3", 168, 168}, {firstWater, fitting, 24, 24}} {
		if h := least(c.name, c.before); h < c.from || h > c.to {
			t.Errorf("%s waits %.1f h after %s, want %g to %g", c.name, h, c.before, c.from, c.to)
		}
	}
}

// op is an operation for plans by hand.
func op(name string, h float64, at Machine, after ...After) Operation {
	return Operation{Name: name, Hours: h, Practiced: h / 2, At: at, Whole: at == Boiler, After: after}
}

// TestByHand: two builders, days of 8 hours, one boiler. Each readies for 2 hours, steams for 5
// and, a night later, fits for 3. The boiler serves one on the first day and the other on the
// second, for a steaming is not left for the night: 2 + 5 on day 1; 5 from the morning of day 2,
// and 3 on day 3.
func TestByHand(t *testing.T) {
	boat := []Operation{op("ready", 2, Bench), op("steam", 5, Boiler, After{"ready", 0}), op("fit", 3, Bench, After{"steam", 12})}
	p, err := Make([]Builder{{"Ann", boat}, {"Bob", boat}}, Terms{HoursADay: 8})
	if err != nil {
		t.Fatal(err)
	}
	if p.Takes != 3 || p.Fewest > 3 || p.Benches != 2 || !p.Fits() || len(p.Held) == 0 {
		t.Errorf("%+v", p)
	}
	swept(t, p)
	if last := p.Held[len(p.Held)-1]; last.Name != "fit" || last.From != (Time{3, 0}) || last.To != (Time{3, 3}) {
		t.Errorf("%+v", last)
	}
	if u := p.Machines[2]; u.Used != 10 || u.Can != 24 {
		t.Errorf("%+v", u)
	}
	// With one bench the second has to wait with readying, but no longer than for the boiler.
	if p, err = Make([]Builder{{"Ann", boat}, {"Bob", boat}}, Terms{HoursADay: 8, Benches: 1}); err != nil || p.Takes != 3 {
		t.Errorf("%+v, %v", p, err)
	}
	swept(t, p)
}

// swept walks over the quarter hours of a plan, by its days and hours alone: never two at the
// boiler or the saw, nobody at two things, no more at benches than there are, none before what
// it waits for.
func swept(t *testing.T, p *Plan) {
	t.Helper()
	slot := func(at Time) int { return (at.Day-1)*p.HoursADay*4 + int(math.Round(at.Hour*4)) }
	clock := func(at Time) float64 { return float64(at.Day-1)*24 + at.Hour }
	for now := range p.Takes * p.HoursADay * 4 {
		at, hands := map[Machine]int{}, map[int]int{}
		for _, k := range p.Tasks {
			if slot(k.From) <= now && now < slot(k.To) {
				at[k.At]++
				hands[k.Builder]++
				if hands[k.Builder] > 1 {
					t.Fatalf("quarter %d: %s has two things in hand", now, p.Builders[k.Builder].Name)
				}
			}
		}
		if at[Boiler] > 1 || at[Saw] > 1 || at[Bench] > p.Benches {
			t.Fatalf("quarter %d: %v", now, at)
		}
	}
	for _, k := range p.Tasks {
		if k.Whole && k.From.Day != k.To.Day && k.Hours < float64(p.HoursADay) {
			t.Errorf("%s is left for the night", k.Name)
		}
		for _, b := range p.Tasks {
			for _, a := range k.After {
				if b.Builder == k.Builder && b.Name == a.Name && clock(k.From) < clock(b.To)+a.Hours-1e-9 {
					t.Errorf("%s of %s begins %v, %g h after %v of %s are not over", k.Name, p.Builders[k.Builder].Name, k.From, a.Hours, b.To, b.Name)
				}
			}
		}
	}
}

func classOf(t testing.TB) []Builder {
	var all []Builder
	for _, boat := range []string{"brook", "lake"} {
		_, of := made(t, boat, nil)
		for _, s := range hours.Skills() {
			all = append(all, Builder{fmt.Sprint(boat, ", ", s), of(s)})
		}
	}
	return all
}

// TestCourses: courses of six builders with more or fewer days, hours and benches hold in every
// quarter of an hour; more of anything never makes one longer, and nothing takes less than
// the fewest days that are proved.
func TestCourses(t *testing.T) {
	all := classOf(t)
	var before *Plan
	for _, terms := range []Terms{{0, 6, 2}, {0, 8, 3}, {0, 8, 6}, {0, 10, 6}, {12, 8, 6}, {14, 7, 6}, {4, 8, 6}} {
		p, err := Make(all, terms)
		if err != nil {
			t.Fatal(err)
		}
		swept(t, p)
		if p.Takes < p.Fewest || terms.Days > 0 && p.AsItIs < p.Takes || p.Tasks[len(p.Tasks)-1].From.Day > p.Takes {
			t.Errorf("%+v: %d days, fewest %d, as it is %d", terms, p.Takes, p.Fewest, p.AsItIs)
		}
		if terms.Days == 0 && before != nil && p.Takes > before.Takes {
			t.Errorf("%+v takes %d days, %+v %d", terms, p.Takes, before.Terms, before.Takes)
		}
		done := 0
		for _, b := range all {
			done += len(b.Work)
		}
		for _, part := range append(p.Prepared, p.Left...) {
			for _, b := range all {
				if slices.ContainsFunc(b.Work, func(o Operation) bool { return o.Name == part.Name }) {
					done--
				}
			}
		}
		if done != len(p.Tasks) {
			t.Errorf("%+v: %d tasks, %d are neither prepared nor left", terms, len(p.Tasks), done)
		}
		before = p
	}
}

// TestReach: what is taken out of a course is enough, needed, and leaves nothing that waits for
// what is not there.
func TestReach(t *testing.T) {
	all := classOf(t)
	as, err := Make(all, Terms{HoursADay: 8})
	if err != nil {
		t.Fatal(err)
	}
	for days := as.Takes - 1; days > 1; days -= 5 {
		terms := Terms{Days: days, HoursADay: 8}
		p, err := Make(all, terms)
		if err != nil {
			t.Fatal(err)
		}
		terms.Benches = p.Benches
		out := newSet()
		for _, o := range p.Prepared {
			out.before[o.Name] = true
		}
		for _, o := range p.Left {
			out.later[o.Name] = true
		}
		if !closed(all, out) || p.AsItIs != as.Takes {
			t.Errorf("%d days: %+v, %+v", days, p.Prepared, p.Left)
		}
		every := offers(all)
		if !p.Fits() {
			if ok, _ := fits(all, terms, every); ok {
				t.Errorf("%d days would do", days)
			}
			continue
		}
		var taken []offer
		for _, o := range every {
			if slices.ContainsFunc(o.names, out.has) {
				taken = append(taken, o)
			}
		}
		for i := range taken {
			less := slices.Delete(slices.Clone(taken), i, i+1)
			if ok, _ := fits(all, terms, less); ok && closed(all, setOf(less)) {
				t.Errorf("%d days do without taking %v out", days, taken[i].names)
			}
		}
	}
}

// BenchmarkCourse plans courses of ten and of two hundred, in days that do not reach.
func BenchmarkCourse(b *testing.B) {
	few := classOf(b)
	for _, n := range []int{10, 200} {
		var all []Builder
		for i := range n {
			all = append(all, few[i%len(few)])
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				if _, err := Make(all, Terms{Days: 14 * (n + 90) / 100, HoursADay: 8}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
