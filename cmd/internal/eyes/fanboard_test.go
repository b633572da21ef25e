package eyes

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/cmd/internal/job"
	"ribwright/render/rendertest"
)

// fanClass is a class of made-up builders: those of the fuller sections read nets.
const fanClass = `name,use,weight_kg,stature_cm
Ann,pack,58,164
Cid,pack,66,170
Fay,pack,70,172
Hal,pack,77,175
Jon,solo,79,181
Kim,solo,92,176
Lee,solo,70,160
Ned,solo,88,190
`

// fanned makes the boards of the class: files by their names.
func fanned(t *testing.T, fields ...[2]string) map[string][]byte {
	t.Helper()
	world := job.World{Made: job.UsualDate(), Files: func(name string) ([]byte, error) {
		if name != "class.csv" {
			return nil, fs.ErrNotExist
		}
		return []byte(fanClass), nil
	}}
	out := map[string][]byte{}
	r, err := job.Ask("class", []string{"class.csv"}, append([][2]string{{"fan-board", "true"}, {"book", "false"}}, fields...)...)
	if err != nil {
		t.Fatal(err)
	}
	result, err := r.Do(world)
	if err != nil {
		t.Fatal(err)
	}
	a := &answer{result: result, made: map[string][]byte{}}
	for _, o := range a.result.Outputs {
		if strings.HasPrefix(o.Name, "course-fan-board-") || strings.HasSuffix(o.Name, "-numbers.json") {
			out[o.Name] = a.file(t, o.Name)
		}
	}
	return out
}

// board is a board as a builder has it: its sheets put together, and where to read.
type board struct {
	strokes  map[string][]seenLine // by pattern, in its own coordinates
	texts    map[string][]rendertest.Text
	Builders []struct {
		Builder  string  `json:"builder"`
		Rib      float64 `json:"midship_rib_mm"`
		Half     float64 `json:"half_length_mm"`
		Ribs     float64 `json:"share_ribs"`
		Mortises float64 `json:"share_mortises"`
	} `json:"builders"`
}

// taped puts the sheets of a board together.
func taped(t *testing.T, file, numbers []byte) board {
	t.Helper()
	b := board{strokes: map[string][]seenLine{}, texts: map[string][]rendertest.Text{}}
	if err := json.Unmarshal(numbers, &b); err != nil {
		t.Fatal(err)
	}
	n, err := rendertest.ReadPages(numbers)
	if err != nil {
		t.Fatal(err)
	}
	pages := pagesOf(t, file)
	for _, v := range n.Pages {
		back := Motion(v.ToSheet).Back()
		on := rendertest.Around(Motion(v.ToSheet).Apply(rendertest.Point{X: v.Edges[0], Y: v.Edges[1]}), Motion(v.ToSheet).Apply(rendertest.Point{X: v.Edges[2], Y: v.Edges[3]}))
		for _, l := range stretches(pages[v.Page-1]) {
			if from, to, shows := within(l.from, l.to, l.clip.Meet(on)); shows && on.Grow(0.5).HoldsBox(l.clip) {
				l.from, l.to = back.Apply(from), back.Apply(to)
				b.strokes[v.Pattern] = append(b.strokes[v.Pattern], l)
			}
		}
		for _, w := range pages[v.Page-1].Texts {
			if on.Grow(0.5).HoldsBox(w.Clip) && on.Holds(w.At) {
				w.At = back.Apply(w.At)
				b.texts[v.Pattern] = append(b.texts[v.Pattern], w)
			}
		}
	}
	return b
}

// scale finds how readings stand on the lane below an edge, by the figures left of zero,
// which grow less from the edge down as far as the lane goes: where reading 0 would stand,
// and how high a millimeter is. A figure may have been moved off a joint's cross, so the
// middle one of all that two figures say is taken.
func (b board) scale(pattern string, edge float64) (zero, high float64) {
	var all [][2]float64
	for _, w := range b.texts[pattern] {
		var reading float64
		if n, _ := fmt.Sscanf(w.Words, "%f", &reading); n == 1 && w.At.X < -3 && w.At.Y < edge+0.5 {
			all = append(all, [2]float64{w.At.Y + capHigh/2, reading})
		}
	}
	slices.SortFunc(all, func(p, q [2]float64) int { return cmp.Compare(q[0], p[0]) })
	for i := range all {
		if i > 0 && all[i][1] >= all[i-1][1] {
			all = all[:i]
			break
		}
	}
	var highs, zeros []float64
	for i, p := range all {
		for _, q := range all[:i] {
			highs = append(highs, (p[0]-q[0])/(p[1]-q[1]))
		}
	}
	high = middle(highs)
	for _, p := range all {
		zeros = append(zeros, p[0]-high*p[1])
	}
	return middle(zeros), high
}

func middle(of []float64) float64 {
	if len(of) == 0 {
		return math.NaN()
	}
	slices.Sort(of)
	return of[len(of)/2]
}

// crossing is where a ray that ends at a place on a lane's upper edge lies at a height: the
// pieces of it that show on all tiles, each on the same straight line.
func (b board) crossing(pattern string, x, edge, at float64, solid bool) (float64, bool) {
	for _, l := range b.strokes[pattern] {
		high, low := l.from, l.to
		if high.Y < low.Y {
			high, low = low, high
		}
		if math.Abs(l.width-0.25) > 0.01 || (len(l.dash) == 0) != solid || high.Y-low.Y < 1 {
			continue
		}
		slope := (high.X - low.X) / (high.Y - low.Y)
		if math.Abs(high.X+slope*(edge-high.Y)-x) < 0.1 && high.Y > edge-200 && low.Y < edge+0.1 {
			return high.X + slope*(at-high.Y), true
		}
	}
	return 0, false
}

// TestFanBoardRead reads finished boards as a builder does: the scale's figures are taken
// off the taped sheets, a level is drawn at the builder's own reading, and where rays cross
// it, between the two of a net by the builder's share, is held to the numbers of the
// builder's own patterns. Tolerances are common practice, no source: half a rib 1 mm,
// bends 5, stringers 2, mortises 1; what a sheet is printed from is rounded to 0.01 mm,
// which a fan makes no more than 0.05 of.
func TestFanBoardRead(t *testing.T) {
	files := fanned(t)
	read, nets, farthest := 0, 0, map[float64]float64{}
	for n := 1; ; n++ {
		stem := fmt.Sprintf("course-fan-board-%d", n)
		file, there := files[stem+"-letter.pdf"]
		if !there {
			break
		}
		b := taped(t, file, files[stem+"-numbers.json"])
		for _, builder := range b.Builders {
			own, err := rendertest.ReadNumbers(files[strings.ToLower(builder.Builder)+"/"+strings.ToLower(builder.Builder)+"-numbers.json"])
			if err != nil {
				t.Fatal(err)
			}
			see := func(what, pattern, words string, reading, share, want, may float64) {
				got, net, err := b.read(pattern, words, reading, share)
				read++
				farthest[may] = max(farthest[may], math.Abs(got-want))
				if net {
					nets++
				}
				if err != nil || math.Abs(got-want) > may+0.05 {
					t.Errorf("%s, %s, %s: read %.2f mm, the own patterns say %.2f (%v)", stem, builder.Builder, what, got, want, err)
				}
			}
			for _, m := range own.Gunwale.Mortises {
				k := strings.TrimLeft(m.Rib, "MFA")
				if m.Rib != "M" {
					see("mortise "+m.Rib, "fan-mortises", "F"+k+" A"+k, builder.Half, builder.Mortises, math.Abs(m.FromMidship), 1)
				}
			}
			for _, r := range own.Ribs {
				k, name, lane := strings.TrimLeft(r.Rib, "MFA"), "M", "fan-0"
				if k != "" {
					name, lane = "F"+k+" A"+k, "fan-"+k
				}
				see("length "+r.Rib, lane, name+" L", builder.Rib, builder.Ribs, r.Length/2, 1)
				for i, at := range r.BendMarks {
					see(fmt.Sprintf("bend %d of %s", i+1, r.Rib), lane, fmt.Sprintf("%s B%d", name, i+1), builder.Rib, builder.Ribs, at, 5)
				}
				for i, at := range r.StringerMarks {
					see(fmt.Sprintf("stringer %d on %s", i+1, r.Rib), lane, fmt.Sprintf("%s S%d", name, i+1), builder.Rib, builder.Ribs, at, 2)
				}
			}
		}
		t.Logf("%s: %d builders", stem, len(b.Builders))
	}
	t.Logf("%d marks read, %d of them on nets; the farthest off, mm, by what is accepted: %.2v", read, nets, farthest)
	if read < 1000 || nets < 20 {
		t.Errorf("%d marks read, %d of them on nets; the class is to have more", read, nets)
	}
}

// read finds a ray by its label and reads it.
func (b board) read(pattern, words string, reading, share float64) (at float64, net bool, err error) {
	i := slices.IndexFunc(b.texts[pattern], func(w rendertest.Text) bool { return w.Words == words })
	if i < 0 {
		return 0, false, fmt.Errorf("no label %q", words)
	}
	label := b.texts[pattern][i].At
	leader, edge, err := b.leader(pattern, label, b.texts[pattern][i].Advance())
	if err != nil {
		return 0, false, err
	}
	zero, high := b.scale(pattern, edge)
	level := zero + high*reading
	one, solid := b.crossing(pattern, leader, edge, level, true)
	other, broken := b.crossing(pattern, leader, edge, level, false)
	left, net := b.bracket(pattern, leader, label.Y)
	switch {
	case !net && solid:
		return one, false, nil
	case !net:
		return 0, false, fmt.Errorf("no ray under %q at %.1f", words, leader)
	case broken && left != leader:
		if one, solid = b.crossing(pattern, left, edge, level, true); !solid {
			return 0, true, fmt.Errorf("no solid ray of %q", words)
		}
	default:
		if other, broken = b.crossing(pattern, left, edge, level, false); !broken {
			return 0, true, fmt.Errorf("no broken ray of %q", words)
		}
	}
	return one + share*(other-one), true, nil
}

// leader finds the line that a label stands beside, to the right of it or near a joint to
// the left, and the lane's upper edge, on which that line stands.
func (b board) leader(pattern string, label rendertest.Point, wide float64) (x, edge float64, err error) {
	const most = 4.5 // mm: a label keeps off a joint's cross
	near := most
	for _, l := range b.strokes[pattern] {
		low, high := min(l.from.Y, l.to.Y), max(l.from.Y, l.to.Y)
		if math.Abs(l.from.X-l.to.X) > 0.02 || math.Abs(l.width-0.1) > 0.01 || low > label.Y+0.1 || high < label.Y+2 {
			continue
		}
		for _, off := range []float64{math.Abs(label.X - 1.2 - l.from.X), math.Abs(label.X + wide + 1.2 - l.from.X)} {
			if off < near {
				near, x, edge = off, l.from.X, low
			}
		}
	}
	if near == most {
		return 0, 0, fmt.Errorf("no leader beside the label at %.1f %.1f", label.X, label.Y)
	}
	for _, l := range b.strokes[pattern] { // on two tiles it is in pieces
		if low, high := min(l.from.Y, l.to.Y), max(l.from.Y, l.to.Y); math.Abs(l.from.X-x) < 0.05 && math.Abs(l.to.X-x) < 0.05 && math.Abs(l.width-0.1) < 0.01 && high > edge-0.05 && low < edge {
			edge = low
		}
	}
	return x, edge, nil
}

// capHigh is the height of the capitals of the scale's figures, mm, whose middles stand on
// their level lines.
const capHigh = 2.5

// bracket is where the bracket over a net begins that ends at a label's leader.
func (b board) bracket(pattern string, leader, up float64) (left float64, is bool) {
	left = leader
	for grown := true; grown; {
		grown = false
		for _, l := range b.strokes[pattern] {
			from, to := min(l.from.X, l.to.X), max(l.from.X, l.to.X)
			if math.Abs(l.from.Y-up) < 0.05 && math.Abs(l.to.Y-up) < 0.05 && from < left-0.01 && to > left-0.05 {
				left, grown, is = from, true, true
			}
		}
	}
	return left, is
}

// TestFanBoardLegible reads the lettering of finished boards, on both papers and in both
// units, as TestLegible does.
func TestFanBoardLegible(t *testing.T) {
	for _, row := range [][2]string{{"letter", "metric"}, {"a4", "imperial"}} {
		for name, file := range fanned(t, [2]string{"loft", "false"}, [2]string{"paper", row[0]}, [2]string{"units", row[1]}) {
			if strings.HasSuffix(name, ".pdf") {
				t.Run(name+" "+row[1], func(t *testing.T) { isLegible(t, file) })
			}
		}
	}
}
