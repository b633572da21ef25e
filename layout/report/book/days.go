package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/shop/course"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// days is the plan of a course: whether its days are enough, what is prepared and what is left
// for later, what holds it up, who has the boiler, and each day.
func (w *writer) days(p *course.Plan) {
	w.chapter("Course plan")
	benches := "1 bench"
	if p.Benches != 1 {
		benches = fmt.Sprintf("%d benches", p.Benches)
	}
	w.say("%s, %s, one boiler, one rip saw, days of %s. A builder does one thing at a time, boiler and saw serve one at a time, and all other work wants a bench. The hours are each builder's own, see Builders.",
		wording.Counted(len(p.Builders), "builder"), benches, wording.Counted(p.HoursADay, "hour"))
	w.say("Glue sets and wood and coats dry by night too: glue and bent ribs overnight, oil a day for each coat, bent ribs some days before the skin, the coating a week before the water. Common practice for a heated workshop, no source; what the maker says comes first.")
	w.reached(p)
	w.partsOf(p)
	w.holdUp(p)
	w.machines(p)
	w.section("Day by day")
	w.say("Times are hours and minutes of work since the day began. Estimates of hours may be off by %s, so the times slip: keep the order, and let whoever is ready have the boiler.", report.Percent(hours.Off))
	for day := 1; day <= p.Takes; day++ {
		w.day(p, day)
	}
}

// reached says whether the days are enough.
func (w *writer) reached(p *course.Plan) {
	takes, as := wording.Counted(p.Takes, "day"), wording.Counted(p.AsItIs, "day")
	proved := "No plan of the same work takes fewer: that is proved."
	if p.Fewest < p.Takes {
		proved = fmt.Sprintf("No better plan was found; none takes fewer than %d.", p.Fewest)
	}
	switch {
	case p.Days == 0:
		w.say("It takes %s. %s", takes, proved)
	case !p.Fits():
		w.warn(fmt.Sprintf("The course does not fit. With nothing prepared and nothing left it takes %s; with all that the next tables have it still takes %s, of %d given. %s More days, more hours a day or fewer builders help, and a second course with its own boiler.", as, takes, p.Days, proved), "arithmetic of this plan")
	case p.AsItIs > p.Days:
		w.say("It takes %s of the %d given, with what the next tables take out of the course: with nothing prepared and nothing left it takes %s.", takes, p.Days, as)
	default:
		w.say("It takes %s of the %d given.", takes, p.Days)
	}
}

// partsOf lists what is taken out of the course.
func (w *writer) partsOf(p *course.Plan) {
	before := report.Titled("The teacher prepares").Words("Work").Numbers("Hours")
	sum := 0.0
	for _, k := range p.Prepared {
		before.Row(k.Name, fmt.Sprintf("%.1f", k.Practiced))
		sum += k.Practiced
	}
	before.Note = fmt.Sprintf("For all boats together, by an experienced woodworker: %.1f hours. The pile is sawn by this book's ripping plan. Glue of what is prepared is hard when the course begins.", sum)
	w.add(before.IfAny()...)
	later := report.Titled("Each builder does after the course").Words("Work").Numbers("Hours of all")
	for _, k := range p.Left {
		later.Row(k.Name, fmt.Sprintf("%.0f", k.Hours))
	}
	w.add(later.Noted("Each builder's own book has these steps in its order of work.").IfAny()...)
}

// holdUp tells the chain of work that makes the course as long as it is.
func (w *writer) holdUp(p *course.Plan) {
	w.section("What holds it up")
	w.say("One chain of work makes the course as long as it is: a quarter of an hour lost in it is lost to the whole course. What is not in it has time to spare, unless another chain is as long.")
	t := report.Titled("").Numbers("Day", "From", "To").Words("Builder", "Work", "Begins when")
	for i, h := range p.Held {
		t.Row(fmt.Sprint(h.From.Day), clock(h.From), until(h.Task), p.Builders[h.Builder].Name, h.Name, begins(p, i))
	}
	w.add(t)
}

// begins says what a link of the chain waited for.
func begins(p *course.Plan, i int) string {
	h := p.Held[i]
	switch {
	case i == 0:
		return "the course begins"
	case h.For == course.Hands:
		return "its builder is free"
	case h.For != "":
		return h.For + " is free"
	}
	for _, a := range h.After {
		if a.Name == p.Held[i-1].Name && a.Hours > 0 {
			return fmt.Sprintf("the work before is done, and has waited %.0f hours", math.Ceil(a.Hours))
		}
	}
	return "the work before is done"
}

// machines say how busy each is, and who has the boiler.
func (w *writer) machines(p *course.Plan) {
	w.section("Benches, saw and boiler")
	t := report.Titled("").Words("").Numbers("There are", "In use, hours", "Of", "Share")
	for _, u := range p.Machines {
		t.Row(wording.Capital(u.Of), fmt.Sprint(u.Count), fmt.Sprintf("%.0f", u.Used), fmt.Sprintf("%.0f", u.Can), report.Percent(u.Used/u.Can))
	}
	w.add(t)
	boiler := report.Titled("Who has the boiler").Numbers("Day", "From", "To").Words("Builder", "Work")
	for _, k := range p.Tasks {
		if k.At == course.Boiler {
			boiler.Row(fmt.Sprint(k.From.Day), clock(k.From), until(k), p.Builders[k.Builder].Name, k.Name)
		}
	}
	if len(boiler.Rows) > 0 {
		w.warn("Steam scalds, and burners make carbon monoxide: steam outdoors, let nobody leave the boiler alone, and keep those who wait their turn away from the box.", "common practice, no source")
	}
	w.add(boiler.IfAny()...)
}

// day lists what each builder does on a day.
func (w *writer) day(p *course.Plan, day int) {
	t := report.Titled(fmt.Sprintf("Day %d", day)).Numbers("No.").Words("Builder", "Work")
	for b, builder := range p.Builders {
		var does []string
		for _, k := range p.Tasks {
			if k.Builder != b || day < k.From.Day || day > k.To.Day {
				continue
			}
			what := k.Name
			if k.At != course.Bench {
				what += " (" + string(k.At) + ")"
			}
			if k.From.Day < day {
				does = append(does, "0:00 go on: "+what)
			} else {
				does = append(does, clock(k.From)+" "+what)
			}
		}
		if len(does) > 0 {
			t.Row(fmt.Sprint(b+1), builder.Name, strings.Join(does, "; "))
		}
	}
	if len(t.Rows) == 0 {
		w.say("Day %d: nobody works; glue, wood or coats dry.", day)
	}
	w.add(t.IfAny()...)
}

// clock letters a time of a day, until that at which a task ends.
func clock(t course.Time) string {
	minutes := int(math.Round(60 * t.Hour))
	return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
}

func until(k course.Task) string {
	if k.To.Day > k.From.Day {
		return fmt.Sprintf("day %d, %s", k.To.Day, clock(k.To))
	}
	return clock(k.To)
}
