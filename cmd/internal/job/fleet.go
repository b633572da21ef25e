package job

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/wording"
	"ribwright/layout/figure"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
	"ribwright/render/json"
	"ribwright/render/svg"
)

// Fleet asks which boats nest in one another.
type Fleet struct {
	Designs []string
	Units   measure.System
	Room    float64  // mm, the least between the boats
	LeaveIn bool     // thwarts, yoke and seats of the lower boats
	Without []string // which of them come out; nil for all
	Roof    float64  // kg; 0 for none
	Door    float64  // mm; 0 for none
	Fit     bool     // propose a smaller design for each boat that does not nest
	Picture bool
}

// usualRoom is the room between boats in one another where nothing is said, mm.
const usualRoom = 5

// room is the field that says how far apart boats in one another must stay.
func room(to *float64) Field {
	const most = 40 // with more, boats are not in one another
	return Field{Name: "room", Takes: "length", Says: "the least room wanted between the boats, all round: as pads on the floor and free at the sides", Value: length(to, 0.1, most)}
}

// NewFleet returns the request with its defaults.
func NewFleet() *Fleet { return &Fleet{Designs: design.ShippedNames(), Room: usualRoom} }

// Fields lists the choices.
func (f *Fleet) Fields() []Field {
	return []Field{
		room(&f.Room),
		{Name: "leave-in", Says: "thwarts, yoke and seats of the lower boats stay in", Value: yes(&f.LeaveIn)},
		without(&f.Without),
		{Name: "roof", Takes: "mass", Says: "what the roof or rack may carry, bars and straps taken off", Value: mass(&f.Roof)},
		{Name: "door", Takes: "length", Says: "clear width of the door the nest must go through", Value: length(&f.Door, 1, 3000)},
		{Name: "fit", Takes: "inner", Says: "propose a smaller design for each inner boat that does not nest, and write it", Value: oneOf(&f.Fit, []string{"", "inner"}, []bool{false, true})},
		units(&f.Units, "what lengths are lettered in"),
		picture(&f.Picture, "profile and section of the nest as fleet.svg too"),
	}
}

// Name takes the designs.
func (f *Fleet) Name(names []string) { f.Designs = names }

// Do nests the boats.
func (f *Fleet) Do(w World) (*Result, error) {
	switch n := len(f.Designs); {
	case n == 1:
		return nil, misuse("", "one boat is no fleet; give two or more, the same one twice if you like")
	case n > stow.Most:
		return nil, misuse("", "%d boats; accepted: 2 to %d, for every order of them is tried (a nest higher than that is lifted by nobody)", n, stow.Most)
	case f.LeaveIn && len(f.Without) > 0:
		return nil, misuse("leave-in,without", "the one leaves everything in and the other takes something out; give one")
	case f.Fit && f.LeaveIn:
		return nil, misuse("fit,leave-in", "a boat is not drawn round a thwart that can be taken out; leave one of them out")
	case f.Fit && f.staysIn():
		return nil, misuse("fit,without", "a boat is not drawn round a thwart that can be taken out; leave one of them out")
	}
	boats, sprung, err := f.boats(w)
	if err != nil {
		return nil, err
	}
	if err := f.named(boats); err != nil {
		return nil, err
	}
	o := stow.Options{Pad: f.Room, LeftIn: f.staysIn()}
	if o.LeftIn {
		o.Out = f.Without
	}
	r, err := stow.Plan(boats, o, stow.Limits{Roof: f.Roof, Door: f.Door}, f.Fit)
	if err != nil {
		return nil, err
	}
	numbers, err := json.Fleet(r)
	if err != nil {
		return nil, err
	}
	return &Result{Report: report.Report{Title: "Fleet", Blocks: trial.Fleet(r, sprung, f.Units)}, Numbers: numbers, Outputs: f.outputs(r)}, nil
}

// staysIn reports whether something that can come out stays in the lower boats.
func (f *Fleet) staysIn() bool {
	return f.LeaveIn || len(f.Without) > 0 && !slices.ContainsFunc(f.Without, func(w string) bool { return strings.EqualFold(strings.TrimSpace(w), "all") })
}

// named refuses a word that means nothing in any of the boats.
func (f *Fleet) named(boats []*stow.Boat) error {
	for _, word := range f.Without {
		if !strings.EqualFold(strings.TrimSpace(word), "all") && !slices.ContainsFunc(boats, func(b *stow.Boat) bool { return b.Takes(word) }) {
			return misuse("without", "nothing in these boats is called %q; accepted: all, seat, thwart, yoke, seat-1, thwart-1, or a name", wording.Clip(word, 40))
		}
	}
	return nil
}

// boats reads and builds every boat, and tells what each does when its cross pieces come
// out to nest; one given twice is built once.
func (f *Fleet) boats(w World) (out []*stow.Boat, sprung []trial.Sprung, err error) {
	built := map[string]*stow.Boat{}
	for _, name := range f.Designs {
		if built[name] == nil {
			k, err := w.factsOf(name)
			if err != nil {
				return nil, nil, err
			}
			if built[name], err = then(name, k.frame, stow.NewBoat)(); err != nil {
				return nil, nil, err
			}
			if len(built[name].Frame.Thwarts) > 0 && !f.staysIn() {
				s, err := then(name, k.bending, withoutAll)()
				if err != nil {
					return nil, nil, err
				}
				sprung = append(sprung, s)
			}
		}
		out = append(out, built[name])
	}
	return out, sprung, nil
}

// withoutAll is what a boat does when all its cross pieces come out.
func withoutAll(b *bend.Report) (s trial.Sprung, err error) {
	w, err := b.Boat.Choose(allOut(b.Frame))
	if err != nil {
		return s, err
	}
	trials, err := b.Boat.Trials(w, 0)
	if err != nil {
		return s, err
	}
	return trial.Sprung{Title: b.Frame.Design.Title, Neutral: b.Boat.Why == nil, Trial: trials[min(1, len(trials)-1)]}, nil
}

// outputs lists the files asked for.
func (f *Fleet) outputs(r *stow.Report) []Output {
	var out []Output
	if f.Picture {
		draw := func(name, what string, s *stow.Stack, failed finding.List) {
			out = append(out, Output{name, what,
				func(to io.Writer) error {
					return svg.EncodeFigure(to, figure.Fleet(s, failed, f.Units), figure.FleetAbout(s))
				}})
		}
		l := report.Letters{Units: f.Units}
		failed := r.Failures(l.Length, func(mm float64) string { return report.Either(f.Units, l.Length(math.Ceil(mm)), l.Length(mm)) })
		if r.After == nil {
			draw("fleet.svg", "profile and section of the nest", r.Stack, failed)
		} else {
			draw("fleet.svg", "profile and section of the nest with the smaller designs", r.After, nil)
			draw("fleet-as-given.svg", "the boats as they are, and where they do not nest", r.Stack, failed)
		}
	}
	for _, b := range r.Proposed {
		if b == nil {
			continue
		}
		d := b.Frame.Design
		out = append(out, derived(d.Stem()+".toml", "the proposed design; loft it, and see first how it floats", d,
			fmt.Sprintf("made smaller so that the boats nest with %.0f mm of room: %s", f.Room, wording.List(f.Designs, fileOf))))
	}
	return out
}
