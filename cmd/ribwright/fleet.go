package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/stow"
	"ribwright/layout/figure"
	"ribwright/render/fleet"
	"ribwright/render/json"
	"ribwright/render/svg"
)

func fleetVerb() verb {
	v := verb{
		name:    "fleet",
		line:    "which boats nest in one another, in which order, and what must come out",
		usage:   "ribwright fleet [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] ... [flags]",
		example: "ribwright fleet brook lake river --roof 75kg --door '900 mm' --lay-out",
	}
	v.run = func(args []string, c console) error { return fleetRun(v, args, c) }
	return v
}

// fleetFlags are the flags of fleet as they were given.
type fleetFlags struct {
	room, door         lengthFlag
	roof               massFlag
	leaveIn, json, lay bool
	fit, out           string
	units              unitsFlag
}

func (a *fleetFlags) set(v verb) *pflag.FlagSet {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	a.room = lengthFlag{mm: 5}
	f.Var(&a.room, "room", "the least room wanted between the boats, all round: as pads on the floor and free at the sides")
	f.BoolVar(&a.leaveIn, "leave-in", false, "thwarts, yoke and seat bars of the lower boats stay in")
	f.Var(&a.roof, "roof", "what the roof or rack may carry, bars and straps taken off")
	f.Var(&a.door, "door", "clear width of the door the nest must go through")
	f.StringVar(&a.fit, "fit", "", "`inner`: propose a smaller design for each boat that does not nest, and write it")
	f.BoolVar(&a.lay, "lay-out", false, "profile and section of the nest as fleet.svg too")
	f.StringVar(&a.out, "out", "out", "`folder` for what is written; made when missing")
	f.Var(&a.units, "units", "what lengths are lettered in")
	f.BoolVar(&a.json, "json", false, "every figure as JSON instead of the page")
	return f
}

// mostRoom is the most room that can be asked for, mm; with more, boats are not in
// one another.
const mostRoom = 40

func fleetRun(v verb, args []string, c console) error {
	var a fleetFlags
	const any = 1 << 20
	rest, err := parse(v, a.set(v), args, any, c.out)
	if err != nil {
		return err
	}
	if len(rest) == 0 {
		rest = design.ShippedNames()
	}
	if err := a.check(v, len(rest)); err != nil {
		return err
	}
	boats, err := openFleet(rest)
	if err != nil {
		return err
	}
	r, err := stow.Plan(boats, stow.Options{Pad: a.room.mm, LeftIn: a.leaveIn}, stow.Limits{Roof: a.roof.kg, Door: a.door.mm}, a.fit != "")
	if err != nil {
		return fmt.Errorf("fleet: %w", err)
	}
	return a.tell(c.out, r)
}

// check refuses what no fleet can be.
func (a *fleetFlags) check(v verb, boats int) error {
	var err error
	switch {
	case boats == 1:
		err = errors.New("one boat is no fleet; give two or more, the same one twice if you like")
	case boats > stow.Most:
		err = fmt.Errorf("%d boats; accepted: 2 to %d, for every order of them is tried (a nest higher than that is lifted by nobody)", boats, stow.Most)
	case a.room.mm > mostRoom:
		err = fmt.Errorf("--room: %g mm is more than boats in one another can have; accepted: more than 0 and up to %d mm", a.room.mm, mostRoom)
	case a.fit != "" && a.fit != "inner":
		err = fmt.Errorf("--fit: %q is not understood; accepted: inner", a.fit)
	case a.fit != "" && a.leaveIn:
		err = errors.New("--fit and --leave-in: a boat is not drawn round a thwart that can be taken out; leave one of them out")
	default:
		return outGiven(v, a.out)
	}
	return usageError{fmt.Errorf("%s: %w", v.name, err)}
}

// openFleet reads and builds every boat; one given twice is built once.
func openFleet(names []string) ([]*stow.Boat, error) {
	built := map[string]*stow.Boat{}
	var out []*stow.Boat
	for _, name := range names {
		b := built[name]
		if b == nil {
			d, err := open(name)
			if err != nil {
				return nil, err
			}
			f, err := frame.Build(d)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
			if b, err = stow.NewBoat(f); err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
			built[name] = b
		}
		out = append(out, b)
	}
	return out, nil
}

// tell writes the figure and the proposals, then the page or the JSON.
func (a *fleetFlags) tell(w io.Writer, r *stow.Report) error {
	outs, words := a.outputs(r)
	if len(outs) > 0 {
		if err := save(a.out, outs, nil); err != nil {
			return err
		}
	}
	if a.json {
		report, err := json.Fleet(r)
		if err != nil {
			return err
		}
		return json.Encode(w, report)
	}
	if err := fleet.Page(w, r, a.units.System); err != nil {
		return err
	}
	for i, o := range outs {
		if _, err := fmt.Fprintf(w, "\n%s\n  %s\n", filepath.Join(a.out, o.name), words[i]); err != nil {
			return err
		}
	}
	return nil
}

// outputs lists the files asked for, and what each is.
func (a *fleetFlags) outputs(r *stow.Report) (outs []output, words []string) {
	if a.lay {
		s := r.Stack
		if r.After != nil {
			s = r.After
		}
		outs = append(outs, output{"fleet.svg", func(w io.Writer) error {
			return svg.EncodeFigure(w, figure.Fleet(s, a.units.System), figure.FleetAbout(s))
		}})
		words = append(words, "profile and section of the nest")
	}
	for _, b := range r.Proposed {
		if b == nil {
			continue
		}
		d := b.Frame.Design
		outs = append(outs, output{d.Slug() + ".toml", func(w io.Writer) error { return design.Encode(w, d) }})
		words = append(words, "the proposed design; loft it, and run float on it first")
	}
	return outs, words
}
