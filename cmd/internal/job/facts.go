package job

import (
	"cmp"
	"path/filepath"
	"reflect"
	"slices"
	"sync"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/outfit"
	"ribwright/geometry/sidebyside"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/lines"
	"ribwright/layout/report"
)

// facts are what is worked out of one design, each the first time that it is asked for
// and never again in the job.
type facts struct {
	design      *design.Design
	fingerprint string
	name        string // the design's, as it was given

	frame    func() (*frame.Frame, error)
	places   func() (fittings.Places, error)
	covered  func() (aboard.Covered, error)
	balance  func() (*balance.Boat, error)
	apart    func() (bend.Apart, error) // what bends ask of the frame alone
	bending  func() (*bend.Report, error)
	carried  func() (aboard.Boat, error) // the boat with the people and gear of the design
	marks    func() ([]marks.Mark, error)
	portrait func() (layout.Drawing, error) // of the boat, which sheets and book both show
}

// factsOf opens a design and readies its facts.
func (w World) factsOf(name string) (*facts, error) {
	d, err := w.open(name)
	if err != nil {
		return nil, err
	}
	return w.facts(d, name)
}

// facts are those that are kept of the same design, or new ones.
func (w World) facts(d *design.Design, name string) (*facts, error) {
	if w.Kept == nil {
		return newFacts(d, name)
	}
	if last := w.Kept.last; last != nil && last.name == name && reflect.DeepEqual(last.design, d) {
		return last, nil
	}
	k, err := newFacts(d, name)
	if err == nil {
		w.Kept.last = k
	}
	return k, err
}

// Kept is the facts of the design that was asked of last, for one who answers questions one
// after the other: they are worked out once as long as the design is the same. It is not for
// two requests at a time.
type Kept struct{ last *facts }

func newFacts(d *design.Design, name string) (*facts, error) { return factsBy(d, name, frame.Build) }

// factsBy readies the facts of a design whose frame is built so.
func factsBy(d *design.Design, name string, build func(*design.Design) (*frame.Frame, error)) (*facts, error) {
	print, err := d.Fingerprint()
	k := &facts{design: d, name: name, fingerprint: print}
	k.frame = then(name, func() (*design.Design, error) { return d, nil }, build)
	k.places = then(name, k.frame, fittings.Placed)
	k.covered = then(name, k.frame, aboard.Cover)
	k.balance = then(name, k.frame, balance.Of)
	k.apart = then(name, k.frame, bend.ApartOf)
	k.bending = sync.OnceValues(k.bends)
	k.carried = sync.OnceValues(func() (aboard.Boat, error) { return k.aboard(d.Crew, d.Gear) })
	k.marks = then(name, k.bending, func(b *bend.Report) ([]marks.Mark, error) { return marks.Of(b.Frame, b) })
	k.portrait = then(name, k.carried, func(b aboard.Boat) (layout.Drawing, error) { return lines.Portrait(b.Frame, b.Cloth), nil })
	return k, err
}

// then is a fact that is worked out, once, from another.
func then[A, B any](name string, first func() (A, error), work func(A) (B, error)) func() (B, error) {
	return sync.OnceValues(func() (out B, err error) {
		from, err := first()
		if err != nil {
			return out, err
		}
		out, err = work(from)
		return out, of(name, err)
	})
}

// bends works out how the wood takes its bends.
func (k *facts) bends() (*bend.Report, error) {
	var p fittings.Places
	var b *balance.Boat
	var a bend.Apart
	if err := together(
		func() (err error) { p, err = k.places(); return err },
		func() (err error) { b, err = k.balance(); return err },
		func() (err error) { a, err = k.apart(); return err },
	); err != nil {
		return nil, err
	}
	r, err := bend.Fitted(p, b, a)
	return r, of(k.name, err)
}

// aboard is the boat with people and gear.
func (k *facts) aboard(people []design.Person, gear []design.Gear) (aboard.Boat, error) {
	c, err := k.covered()
	if err != nil {
		return aboard.Boat{}, err
	}
	p, err := k.places() // asked for last: others may work them out while the cloth is put on
	if err != nil {
		return aboard.Boat{}, err
	}
	b, err := aboard.Fitted(c, p, people, gear)
	return b, of(k.name, err)
}

// together works out facts that know nothing of one another at the same time. It returns
// the first error in the order given.
func together(facts ...func() error) error {
	faults := make([]error, len(facts))
	work := make([]func(), len(facts))
	for i, fact := range facts {
		work[i] = func() { faults[i] = fact() }
	}
	sidebyside.All(work...)
	return cmp.Or(faults...)
}

// hands works out how true the builder must be, with the people and gear of the design.
func (k *facts) hands() (*handwork.Report, error) {
	b, err := k.balance()
	if err != nil {
		return nil, err
	}
	carried, err := k.carried()
	if err != nil {
		return nil, err
	}
	r, err := handwork.Of(b, &carried)
	return r, of(k.name, err)
}

// report is what a job of a kind tells.
func (k *facts) report(kind string, blocks []report.Block) report.Report {
	return report.Report{Title: k.design.Title, Kind: kind, For: k.design.For, Edition: k.design.Edition, Fingerprint: k.fingerprint, Blocks: blocks}
}

// titled is the design's title with its edition and its fingerprint, for a file that shows
// nothing else of them.
func (k *facts) titled() string { return k.report("", nil).Foot() }

// ship readies the boat to be fitted out, with the people of its design or a usual
// one. beside is the second boat of a pair, "" for one like the first.
func (k *facts) ship(w World, gear []design.Gear, beside string, in water.Kind) (outfit.Ship, error) {
	on, err := water.At(in, water.Usual)
	if err != nil {
		return outfit.Ship{}, err
	}
	s, err := k.manned(gear, on)
	if err != nil || beside == "" {
		return s, err
	}
	other, err := w.factsOf(beside)
	if err != nil {
		return s, of("the boat beside "+k.name, err)
	}
	second, err := other.manned(other.design.Gear, on)
	s.Beside = &second.Boat
	return s, err
}

func (k *facts) manned(gear []design.Gear, on water.Water) (outfit.Ship, error) {
	b, err := k.aboard(weight.People(k.design), gear)
	return outfit.Ship{Boat: b, Water: on}, err
}

// beside is the second boat that the design names, looked for beside the design.
func (k *facts) beside() string {
	with := k.design.Pair().With
	if with == "" || slices.Contains(design.ShippedNames(), with) || filepath.IsAbs(with) {
		return with
	}
	return filepath.Join(filepath.Dir(k.name), with)
}

// outfits sizes the outfits that the design has aboard.
func (k *facts) outfits(w World, gear []design.Gear) (*outfit.Outfits, error) {
	if k.design.Fitted() == (design.Outfit{}) {
		return &outfit.Outfits{}, nil
	}
	s, err := k.ship(w, gear, k.beside(), water.Fresh)
	if err != nil {
		return nil, err
	}
	return outfit.Of(s), nil
}

// loose floats the boat, in fresh water, with ribs that are only pushed in.
func (k *facts) loose() (*afloat.Loose, error) {
	on, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		return nil, err
	}
	carried, err := k.carried()
	if err != nil {
		return nil, err
	}
	a, err := k.apart() // and not of the bends, which wait for the balance
	if err != nil {
		return nil, err
	}
	return afloat.LooseRibs(carried, a.Loose, on), nil
}

// allOut is the choice of all cross pieces and seats, of none where there are none.
func allOut(f *frame.Frame) []string {
	if len(f.Thwarts)+len(f.Seats) == 0 {
		return nil
	}
	return []string{"all"}
}
