package sizing

import (
	"cmp"
	"fmt"
	"math"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/trial/cargo"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
)

// Case is one brief being sized by one family. It belongs to one goroutine.
type Case struct {
	Family *family.Family
	Brief  Brief
	Effort bool    // whether the effort is worked out, which takes longer than all else
	Wetted bool    // whether the skin under water is measured, for which few formulas ask
	Levers bool    // whether it is worked out how the boat stands, which takes some time too
	Trials []Trial // what else a finished boat is asked

	hand  map[string]float64 // values put in the place of formulas
	run   *formula.Run
	woods densities
	found Found
	lying lying // of the last round
}

// Trial tries a finished boat in a way that no formula knows, as in another boat.
type Trial struct {
	Name string                             // of its check; no family has one of that name
	Of   func(*Boat) (formula.Check, error) // a check that compares two sizes
}

// NewCase checks the brief and makes a case of it.
func NewCase(f *family.Family, b Brief) (*Case, error) {
	b = b.arranged(f.Seats)
	if err := b.Check(f.Seats); err != nil {
		return nil, err
	}
	c := &Case{Family: f, Brief: b, Levers: f.Program.Uses(standingNames()...), Wetted: f.Program.Uses("wetted"), woods: densities{}, hand: map[string]float64{}, run: f.Program.NewRun()}
	return c, c.Brief.put(c.run)
}

// forget makes the case begin again from the family's guesses, as after a boat that
// could not be floated; what was set by hand stays.
func (c *Case) forget() {
	c.found = nil
	c.run.Forget()
}

// Run gives the values as worked out last.
func (c *Case) Run() *formula.Run { return c.run }

// Set puts a value in the place of a formula.
func (c *Case) Set(name string, v float64) error { return c.run.Fix(name, formula.Num(v)) }

// mostRounds is how often designing and floating go round. The shipped families
// need some five rounds.
const mostRounds = 60

// Settle works the formulas out, draws and floats the boat they give, and goes round
// until what was found afloat stays the same; then it makes the boat as firm as it must
// be for its standing. Values are not rounded.
//
// Errors: a formula without an answer, a boat that cannot be drawn or floated, or
// formulas that never settle.
func (c *Case) Settle() error {
	c.run.Smooth = true
	if err := c.agree(); err != nil {
		return err
	}
	return c.firm()
}

// agree goes round until formulas and flotation agree.
func (c *Case) agree() error {
	for round := range mostRounds {
		found, err := c.round()
		if err != nil {
			return err
		}
		name, moved := c.moved(found)
		if round > 8 {
			found = c.between(found) // half a step settles what jumps to and fro
		}
		c.found = found
		if err := found.put(c.run); err != nil {
			return err
		}
		if moved == 0 {
			return cmp.Or(c.stand(), c.run.Work(nil))
		}
		if round == mostRounds-1 {
			return fmt.Errorf("%s: the formulas never settle: after %d rounds of designing and floating %s still moves by %.3g mm or kg; a value found afloat is fed back too strongly",
				c.Family.Name, mostRounds, name, moved)
		}
	}
	return nil
}

// round designs the boat with what was found before and floats it.
func (c *Case) round() (Found, error) {
	d, err := c.design()
	if err != nil {
		return nil, err
	}
	var found Found
	var near *float.Plane // where the boat of the round before lay
	if c.found != nil {
		near = &c.lying.rest.Plane
	}
	found, c.lying, err = c.Brief.floatSketch(d, c.seats(), near, c.woods, asked{c.Wetted, c.Effort})
	if err != nil {
		// A value out of range is plainer than what it does to the drawing.
		if p := d.Check(); p != nil {
			return nil, c.problem(p)
		}
	}
	return found, err
}

func (c *Case) design() (*design.Design, error) {
	if err := c.run.Work(c.Family.Drawing); err != nil {
		return nil, err
	}
	d, err := c.Family.Design(c.run)
	if err != nil {
		return nil, err
	}
	if len(c.Brief.Riders()) > 0 {
		if !c.Family.Program.HasFormula("live_at") {
			return nil, fmt.Errorf("%s does not say where passengers and dogs go; give it a line live_at = the place along the boat where their weight comes down", c.Family.Name)
		}
		c.Brief.embark(d, c.run.Number("live_at"))
	}
	d.Title = c.Brief.Title
	if c.Brief.Skill != family.Average { // which is what a design without the key says
		d.Skill = c.Brief.Skill
	}
	if c.Brief.LongestStick < DefaultBrief().LongestStick {
		d.Stock.Longest = measure.Length(c.Brief.LongestStick)
	}
	return d, nil
}

// told says of a design for whom it is and where it came from.
func (c *Case) told(d *design.Design) {
	d.For = c.Brief.Who()
	d.First("sized by the family " + wording.Clip(wording.OneLine(c.Family.Name), 80))
	d.Edition = cmp.Or(c.Brief.Edition, d.Edition)
}

// seats are where the crew sits.
func (c *Case) seats() seats {
	at := seats{c.run.Number("seat_at")}
	if c.Family.Seats == 2 {
		at = append(at, c.run.Number("partner_seat_at"))
	}
	return at
}

// still is the change, mm, kg or thousandths of a radian, that no longer counts.
const still = 0.005

// moved returns the value found afloat that changed most since the last round,
// and 0 when none changed to speak of.
func (c *Case) moved(found Found) (name string, most float64) {
	if c.found == nil {
		return "", math.Inf(1)
	}
	for _, n := range settling {
		change := math.Abs(found[n] - c.found[n])
		if n == "trim" {
			change *= 1000
		}
		if change > math.Max(still, most) {
			name, most = n, change
		}
	}
	return name, most
}

// settling lists what must stay the same; the rest follows from it.
var settling = []string{"draft", "freeboard", "gm", "km", "trim", "all_up", "boat_center", "seat_width", "extreme_beam", "gunwale_stick"}

// between returns the mean of what was found now and before.
func (c *Case) between(found Found) Found {
	out := Found{}
	for n, v := range found {
		out[n] = (v + c.found[n]) / 2
	}
	return out
}

// Finish makes the boat of a settled case: values rounded as the family says,
// every part made, floated as its cloth makes it.
//
// Errors: a value the design does not take, or a part that cannot be made.
func (c *Case) Finish() (*Boat, error) {
	c.run.Smooth = false
	d, err := c.design()
	if err != nil {
		return nil, err
	}
	c.told(d)
	if err := placeScarfs(d); err != nil {
		return nil, err
	}
	if p := d.Check(); p != nil {
		return nil, c.problem(p)
	}
	f, err := frame.Build(d)
	if err != nil {
		return nil, err
	}
	boat, err := aboard.New(f, d.Crew, d.Gear)
	if err != nil {
		return nil, err
	}
	found, stands, err := c.Brief.floatFrame(boat, c.seats())
	if err != nil {
		return nil, err
	}
	moves, err := cargo.Of(boat, stands, c.Brief.Density)
	if err != nil {
		return nil, err
	}
	if err := found.put(c.run); err != nil {
		return nil, err
	}
	if err := c.run.Work(c.Family.Drawing.Others()); err != nil {
		return nil, err
	}
	checks, err := c.run.Checks()
	if err != nil {
		return nil, err
	}
	return c.tried(&Boat{Design: d, Frame: f, Found: found, Standing: stands, Cargo: moves, Checks: checks, Case: c})
}

// tried adds what the boat is asked beside the family's checks.
func (c *Case) tried(b *Boat) (*Boat, error) {
	for _, try := range c.Trials {
		v, err := try.Of(b)
		if err != nil {
			return nil, err
		}
		b.Ask(v)
	}
	return b, nil
}

// problem tells what a formula gave that no design takes.
func (c *Case) problem(p *design.Problem) error {
	source := c.Family.Sources(c.run)[p.Key]
	if source == "" {
		return fmt.Errorf("%s: %s: %s", c.Family.Name, p.Key, p.Text)
	}
	// The formula to mend is the one that the key only rounds or passes on.
	if s, ok := c.run.Origin(source); ok && c.Family.Program.HasFormula(s.Name) {
		source = s.Name
	}
	if _, set := c.hand[source]; set {
		return &SetByHand{fmt.Errorf("%s: %s", source, p.Text)}
	}
	return c.Family.Program.Where(source).Fault(source, p.Text)
}

// SetByHand is what is wrong with a value that was put in the place of its formula.
type SetByHand struct{ Err error }

func (s *SetByHand) Error() string { return s.Err.Error() }

// Size settles a brief and finishes it.
func Size(f *family.Family, b Brief) (*Boat, error) {
	c, err := NewCase(f, b)
	if err != nil {
		return nil, err
	}
	if err := c.Settle(); err != nil {
		return nil, c.Refused(err)
	}
	boat, err := c.Finish()
	return boat, c.Refused(err)
}

// Put puts a value of a dimension in the place of a formula. Errors: a name that
// has no formula, or measures something else.
func (c *Case) Put(name string, v float64, d formula.Dim) error {
	if err := numberOf(c.Family.Program, name, d, "set "+name); err != nil {
		return err
	}
	c.hand[name] = v
	return c.Set(name, v)
}

// placeScarfs moves each scarf that the formulas ask for to the nearest room
// between mortises and cross pieces, which is only known when the gunwale has
// been drawn.
func placeScarfs(d *design.Design) error {
	wanted := d.Gunwale.Scarfs
	if len(wanted) == 0 {
		return nil
	}
	d.Gunwale.Scarfs = nil
	if d.Check() != nil {
		d.Gunwale.Scarfs = wanted
		return nil // the finish tells what is wrong
	}
	f, err := frame.Build(d)
	if err != nil {
		return err
	}
	for _, w := range wanted {
		best := math.Inf(1)
		for _, room := range f.Gunwale.ScarfRooms(f.Gunwale.ScarfLength) {
			if mid := (room.From + room.To) / 2; math.Abs(mid-float64(w)) < math.Abs(best-float64(w)) {
				best = mid
			}
		}
		if math.IsInf(best, 1) {
			best = float64(w)
		}
		d.Gunwale.Scarfs = append(d.Gunwale.Scarfs, measure.Length(math.Round(best)))
	}
	return nil
}
