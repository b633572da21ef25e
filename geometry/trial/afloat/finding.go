package afloat

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/yardstick"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

// find looks at the figures in the order in which they matter.
func (r *Report) find() {
	for _, look := range []func(*Report){
		(*Report).findUpright, (*Report).findStanding, (*Report).findFreeboard, (*Report).findCargo, (*Report).findCapacity, (*Report).findLean,
		(*Report).findTrim, (*Report).findEffort, (*Report).findSkin, (*Report).findCloth, (*Report).findSwamped, (*Report).findCarried, (*Report).findWeights, (*Report).findFitted, (*Report).findFeet, (*Report).findReminders,
	} {
		look(r)
	}
}

func (r *Report) findUpright() {
	if r.Fault != nil {
		r.Findings = append(r.Findings, finding.Finding{About: "stability", Standing: finding.Arithmetic, Verdict: finding.Unsafe,
			Text: fmt.Sprintf("it capsizes: %s%s", r.Fault.Text, r.lower()), Mend: r.steady()})
		return
	}
	s := r.Standing
	text := fmt.Sprintf("GM %.0f mm, greatest righting lever %.0f mm at %.0f deg", r.Rest.GM, s.Most, deg(s.MostAt))
	switch {
	case !math.IsNaN(s.GoesOver):
		text += fmt.Sprintf("; past %.0f deg it goes over by itself", deg(s.GoesOver))
		if !math.IsNaN(s.Flooding) {
			text += fmt.Sprintf(", before water would come over the gunwale at %.0f deg", deg(s.Flooding))
		}
	case !math.IsNaN(s.Flooding):
		text += fmt.Sprintf("; water comes over the gunwale at %.0f deg of heel, %s", deg(s.Flooding), r.where(r.Curve.At.At.X))
	}
	r.Findings.Say("stability", finding.Arithmetic, "%s%s", text, r.lower())
}

// findStanding lays the boat beside known ones.
func (r *Report) findStanding() {
	s := r.Standing
	if r.Fault != nil {
		return
	}
	people := len(r.Boat.Crew)
	than, of := yardstick.Steadier(s.Most, people)
	text := fmt.Sprintf("its greatest righting moment is %.0f N m, and by its greatest lever it is steadier than %d of %d known boats", s.Moment/1000, than, of)
	if s.Held > 0 {
		who := "all people's"
		if people == 1 {
			who = "the paddler's"
		}
		text += fmt.Sprintf("; %s whole weight, moved aside at once, can be held up to %.0f mm off the middle line", who, s.Held)
	}
	r.Findings.Say("standing", finding.Compared, "%s", text)
}

func (r *Report) findCargo() { r.Findings = append(r.Findings, r.Cargo.Findings()...) }

// lower says what GM would be with everyone sitting on the floor.
func (r *Report) lower() string {
	if r.Boat.Frame == nil || !slices.ContainsFunc(r.Boat.People, func(p design.Person) bool { return p.Posture != design.Floor || !r.onFloor(p) }) {
		return ""
	}
	low := slices.Clone(r.Boat.People)
	for i := range low {
		low[i] = r.Boat.Frame.Design.Lowered(low[i])
		low[i].Posture = design.Floor
	}
	items := append(weight.Crew(r.Boat.Frame.Hull, r.Boat.Frame.Design, low), r.Boat.Gear...)
	l := float.Total(r.Boat.Light(), weight.Sum(items))
	return fmt.Sprintf("; with everyone sitting on the floor GM is %.0f mm", r.Rest.KM-l.At.Z)
}

// paddlers counts those who paddle.
func (r *Report) paddlers() (n int) {
	for _, p := range r.Boat.People {
		if !p.Role.Live() {
			n++
		}
	}
	return n
}

func (r *Report) onFloor(p design.Person) bool {
	_, seated := r.Boat.Frame.Design.SeatOf(p)
	return !seated
}

func (r *Report) findFreeboard() {
	free, want := r.Rest.Freeboard, r.Options.Freeboard
	f := finding.Finding{About: "freeboard", Standing: finding.Forum, Verdict: finding.Holds, Measure: finding.Measure{Value: math.Round(free.Least), Limit: want, Unit: "mm"}}
	f.Text = fmt.Sprintf("freeboard %.0f mm, least %s, with %s; %.0f mm ", free.Least, r.where(free.At.X), r.carried(), want)
	if f.Value >= want {
		f.Text += "is asked for"
	} else {
		f.Verdict, f.Cure = finding.Missed, fmt.Sprintf("%.0f mm more depth", math.Ceil(want-free.Least))
		if over := r.payload() - r.capacity(want); r.Boat.Frame != nil && over < r.payload() {
			f.Cure = fmt.Sprintf("%.0f kg less or %s", math.Ceil(over), f.Cure)
		}
		f.Text += "needs " + f.Cure
		f.Mend = r.deeper()
	}
	r.Findings = append(r.Findings, f)
}

func (r *Report) payload() float64 { return weight.Sum(r.Boat.Aboard()).Mass }

func (r *Report) carried() string {
	if r.Boat.Frame == nil || r.Options.Draft > 0 {
		return fmt.Sprintf("%.0f kg in all", r.Load.Mass)
	}
	return fmt.Sprintf("%.0f kg aboard", r.payload())
}

// capacity is the payload that leaves a freeboard, kg.
func (r *Report) capacity(freeboard float64) float64 {
	boat, pay := r.Boat.Light(), weight.Sum(r.Boat.Aboard())
	if r.Boat.Frame == nil {
		pay = r.Load
	}
	if pay.Mass == 0 {
		pay = float.Load{Mass: 1, At: boat.At}
	}
	return r.Boat.Hull.Capacity(boat, pay, r.Options.Water.Density, freeboard) * pay.Mass
}

// upright says whether the boat would stay so with that much aboard, kg.
func (r *Report) upright(payload float64) string {
	part := weight.Sum(r.Boat.Aboard())
	if part.Mass == 0 || r.Boat.Frame == nil || payload == 0 {
		return ""
	}
	part.Mass = payload
	l := float.Total(r.Boat.Light(), part)
	p, m, err := r.Boat.Hull.Balance(l, r.Options.Water.Density, 0, nil)
	if err != nil {
		return fmt.Sprintf(", but the boat finds no rest under it (%v)", err)
	}
	if gm := float.GM(p, m, l); gm <= 0 {
		return fmt.Sprintf(", but the boat would not stay upright under it (GM %.0f mm)", gm)
	}
	return fmt.Sprintf(", with a GM of %.0f mm", float.GM(p, m, l))
}

// sixInches is the freeboard at which capacity is commonly quoted, mm, and cautious the
// share of it that some paddlers take off. Forum grade.
const (
	sixInches = 152.4
	cautious  = 0.40
)

func (r *Report) findCapacity() {
	if r.Fault != nil {
		return // a boat that goes over has none
	}
	most := r.capacity(sixInches)
	what := "besides the boat"
	if r.Boat.Frame == nil {
		what = "boat included"
	}
	r.Findings.Say("capacity", finding.Forum, "%.0f kg, %s and spread as now, leaves the %.0f in (%.0f mm) of freeboard at which capacities are quoted%s; take it as an upper bound, some paddlers take %.0f %% off (%.0f kg)",
		most, what, sixInches/25.4, sixInches, r.upright(most), 100*cautious, (1-cautious)*most)
	if want := r.Options.Freeboard; math.Abs(want-sixInches) > 5 {
		r.Findings.Say("capacity", finding.Arithmetic, "%.0f kg, %s, leaves %.0f mm", r.capacity(want), what, want)
	}
}

// The shift of a person's weight that is tried, mm, as for a look over the
// shoulder, and the heel that a code for small passenger craft allows with
// everyone on one side. The shift is common practice, no source. Source of the
// heel: a UK code of practice for small commercial vessels, 11.4.1.
const (
	leans     = 50.0
	passenger = 7.0
)

func (r *Report) findLean() {
	name, l := heaviest(r.Boat.Crew)
	if l.Mass == 0 || r.Fault != nil {
		return
	}
	far := r.Standing.Held * r.Boat.Carried() / l.Mass
	lean, ok := r.lean(l.Mass, leans)
	if !ok {
		r.Findings.Warn("leaning out", finding.Arithmetic, "%s (%.0f kg), held stiff, rolls the boat until water comes in once their weight has moved %.0f mm aside", name, l.Mass, far)
		return
	}
	r.Findings.Say("leaning out", finding.Borrowed, "%s (%.0f kg) leaning out so that their weight moves %.0f mm heels the boat %.0f deg and leaves %.0f mm of freeboard; held stiff, %.0f mm rolls it until water comes in. A code for small passenger craft stops at %.0f deg with everyone to one side",
		name, l.Mass, leans, deg(lean.Heel), lean.Freeboard, far, passenger)
}

func (r *Report) findTrim() {
	rise := r.Rest.TrimRise()
	if math.Abs(rise) < 1 {
		r.Findings.Say("trim", finding.Arithmetic, "floats level")
		return
	}
	end := "stern"
	if rise < 0 {
		end = "bow"
	}
	cure := ""
	text := fmt.Sprintf("trims %.0f mm down by the %s over the waterline", math.Abs(rise), end)
	if name, l := r.mover(); l.Mass > 0 {
		step := rise * r.Rest.MomentToTrim / (l.Mass * measure.Gravity)
		way := "forward"
		if step < 0 {
			way = "aft"
		}
		cure = fmt.Sprintf("%s (%.0f kg) moved %.0f mm %s", name, l.Mass, math.Abs(step), way)
		text += "; " + cure + " would level it"
	}
	text += ". A little by the stern steers well, a little by the bow is liked for fast paddling"
	r.Findings = append(r.Findings, finding.Finding{About: "trim", Text: text, Standing: finding.Memory, Cure: cure, Mend: r.leveled()})
}

// mover is what is most easily moved: the heaviest gear, or a person.
func (r *Report) mover() (name string, l float.Load) {
	if name, l = heaviest(r.Boat.Gear); r.Boat.Frame == nil || l.Mass == 0 {
		return heaviest(r.Boat.Crew)
	}
	return name, l
}

func deg(a float64) float64 { return a * 180 / math.Pi }

func (r *Report) where(x float64) string {
	aft, fore := r.Boat.Hull.Ends()
	share := (2*x - aft - fore) / (fore - aft)
	end, u := "bow", share
	if u < 0 {
		end, u = "stern", -u
	}
	switch {
	case u < 0.15:
		return "amidships"
	case u < 0.7:
		return "at the " + end + " quarter"
	}
	return "at the " + end
}

// Lean is what happens when a part of the weight moves aside.
type Lean struct {
	Heel      float64 // radians
	Freeboard float64 // mm, at its lowest then
}

// lean moves a mass, kg, aside by mm; ok is false when water comes in or the boat
// goes over.
func (r *Report) lean(mass, aside float64) (Lean, bool) {
	l := r.Load.Shifted(mass, geometry.Point3{Y: aside})
	p, _, err := r.Boat.Hull.Settle(l, r.Options.Water.Density)
	if err != nil {
		return Lean{}, false
	}
	return Lean{math.Abs(p.Heel), r.Boat.Hull.Freeboard(p).Least}, true
}

func heaviest(items []weight.Item) (name string, l float.Load) {
	for _, i := range items {
		if v := i.Load(); v.Mass > l.Mass {
			name, l = i.Name, v
		}
	}
	return name, l
}

// touring is the power at the paddle that a paddler keeps up, W: all day, and for
// an hour. From memory: 40 to 80 and 100 to 150.
const (
	allDay = 50.0
	anHour = 110.0
)

func (r *Report) findEffort() {
	people := math.Max(1, float64(r.paddlers()))
	each := ""
	if people > 1 {
		each = " each"
	}
	slow, fast := r.Hull.SpeedAt(r.Options.Water, allDay*people), r.Hull.SpeedAt(r.Options.Water, anHour*people)
	r.Findings.Say("effort", finding.Designs, "%.0f W%s at the paddle, an easy day's work, keeps up about %.1f km/h; %.0f W%s, an hour's hard work, %.1f km/h. Flat, deep, still water; power and a paddle's efficiency of %.0f %% are from memory",
		allDay, each, slow*3.6, anHour, each, fast*3.6, effort.Efficiency*100)
	const hump = 0.40
	u := hump * math.Sqrt(measure.Gravity*r.Hull.Length)
	r.Findings.Say("effort", finding.Memory, "past %.1f km/h (Froude number %.2f on %.2f m of waterline) effort climbs steeply; Michell's integral exaggerates the humps and hollows before it", u*3.6, hump, r.Hull.Length)
}

func (r *Report) findSkin() {
	if r.unsmooth != nil {
		r.Findings.Say("skin", finding.Arithmetic, "the ribs' smooth arcs find no rest to be compared with: %v", r.unsmooth)
	}
	if r.Smooth == nil {
		return
	}
	a, b := r.Rest, *r.Smooth
	r.Findings.Say("skin", finding.Arithmetic, "the cloth, flat between stringers, floats %.1f mm deeper than the ribs' smooth arcs would; GM %.0f mm against %.0f mm, wetted surface %.2f m2 against %.2f m2",
		a.Draft-b.Draft, a.GM, b.GM, a.Wetted/1e6, b.Wetted/1e6)
}

func (r *Report) findWeights() {
	if r.Boat.Frame == nil {
		return
	}
	r.Findings.Say("weights", finding.Estimate, "the boat's %.1f kg are worked from volumes and densities: weigh it. How high people's weight lies is good to some 30 mm, and GM with it", r.Boat.Own().Mass)
}

// findFeet warns of seats under which feet may be caught.
func (r *Report) findFeet() {
	for _, s := range r.Boat.Seats {
		r.Findings = append(r.Findings, s.Feet()...)
	}
}

func (r *Report) findReminders() {
	text := "a wearable life jacket for each person"
	n := 0
	for _, p := range r.Boat.People {
		if p.Role != design.Dog {
			n++
		}
	}
	if n > 1 {
		text = fmt.Sprintf("%d wearable life jackets, one for each person", n)
	}
	r.Findings.Say("on board", finding.Law, "%s (in the United States 33 CFR 175.15). Registration, lights and sound signals follow local law; sail, motor, passengers for hire or a sale change which rules apply", text)
}

// findCloth tells of ribs that stand outside the flat cloth: it lies on them, so
// the volume worked out between the stringers is a little less than the boat's.
func (r *Report) findCloth() {
	f := r.Boat.Frame
	if f == nil {
		return
	}
	c := skin.ClearanceOf(f)
	r.Clearance = c
	if len(c.Proud) == 0 {
		return
	}
	worst := c.Nearest
	mm := func(v float64) string { return fmt.Sprintf("%.1f mm", v) }
	text := fmt.Sprintf("between %s the cloth lies on ribs instead of spanning flat: rib %s stands %s out of it, the most of %s. Ribs then show and chafe the cloth, and the boat floats a little higher than worked out here",
		worst.Between(f), worst.Rib, mm(worst.By), skin.Runs(f, c.Proud))
	if c.Cure != nil {
		text += fmt.Sprintf("; to keep all ribs %s inside it, %s", mm(-c.Cure.By), c.Cure.Words(f.Design, mm))
	}
	r.Findings.Say("skin", finding.Arithmetic, "%s", text)
}
