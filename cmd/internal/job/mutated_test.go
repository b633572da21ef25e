package job

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"ribwright/geometry/design"
	renderjson "ribwright/render/json"
	"ribwright/render/rendertest"
	"ribwright/render/text"
)

// mutated is how many designs are changed at random, unless told 2, and 24 in the long run.
var mutated = flag.Int("mutated", 0, "designs to change at random")

// seedOfMutated lets a longer search go on where another left off.
var seedOfMutated = flag.Uint64("mutatedseed", 21, "first seed of the changes")

func howManyMutated() int {
	switch {
	case *mutated > 0:
		return *mutated
	case os.Getenv("RIBWRIGHT_LONG") != "":
		return 24
	}
	return 2
}

// hang is longer than any verb takes for any design, with other work on the machine.
const hang = 5 * time.Minute

// TestMutated: a design file that was changed at random, line by line, is refused in one
// line, or every verb answers: in time, without a fault, every figure a number, nothing
// drawn off its sheet or farther out than the boat is long. What is drawn is read back from the files.
func TestMutated(t *testing.T) {
	accepted := 0
	for i := range howManyMutated() {
		r := rand.New(rand.NewPCG(*seedOfMutated+uint64(i), 3))
		name := design.ShippedNames()[i%3]
		for tries := 0; ; tries++ {
			file, about := changedLines(r, shippedText(t, name))
			d, err := design.Decode(strings.NewReader(file), "changed.toml")
			if err != nil {
				oneLine(t, about, err)
				continue
			}
			accepted++
			everyVerb(t, fmt.Sprintf("seed %d, %s: %s", *seedOfMutated+uint64(i), name, about), file, d)
			break
		}
	}
	t.Logf("%d designs accepted", accepted)
}

func shippedText(t *testing.T, name string) string {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := design.Encode(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

var aFigure = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)

// changedLines alters one to four lines of a design file: a figure scaled, moved, turned round,
// made nothing or huge, or the line left out.
func changedLines(r *rand.Rand, file string) (string, string) {
	lines := strings.Split(file, "\n")
	var with []int
	for i, l := range lines {
		if !strings.HasPrefix(l, "#") && strings.Contains(l, "=") && aFigure.MatchString(l) {
			with = append(with, i)
		}
	}
	var about []string
	for range 1 + r.IntN(4) {
		i := with[r.IntN(len(with))]
		if r.IntN(12) == 0 {
			about = append(about, "without "+lines[i])
			lines[i] = ""
			continue
		}
		lines[i] = aFigure.ReplaceAllStringFunc(lines[i], func(s string) string {
			var v float64
			fmt.Sscan(s, &v)
			switch r.IntN(8) {
			case 0:
				v = 0
			case 1:
				v = -v
			case 2:
				v *= 10
			case 3:
				v /= 10
			default:
				v *= 0.6 + 0.9*r.Float64()
			}
			return fmt.Sprintf("%.4g", v)
		})
		about = append(about, strings.TrimSpace(lines[i]))
	}
	return strings.Join(lines, "\n"), strings.Join(about, "; ")
}

func oneLine(t *testing.T, about string, err error) {
	t.Helper()
	if s := err.Error(); strings.ContainsAny(s, "\n\r") || strings.Contains(s, "NaN") || len(s) > 700 {
		t.Errorf("%s: %q is no one line", about, s)
	}
}

// everyVerb asks every verb that takes a design, and makes what it offers.
func everyVerb(t *testing.T, about, file string, d *design.Design) {
	t.Helper()
	files := Files(func(name string) ([]byte, error) {
		if name == "changed.toml" {
			return []byte(file), nil
		}
		return nil, os.ErrNotExist
	})
	for _, c := range []struct {
		verb   string
		names  []string
		fields [][2]string
	}{
		{"float", nil, [][2]string{{"svg", "true"}}}, {"bend", nil, [][2]string{{"svg", "true"}}}, {"loft", nil, [][2]string{{"nest", "quick"}}},
		{"book", nil, nil}, {"sail", nil, [][2]string{{"loft", "true"}}}, {"pair", nil, [][2]string{{"purpose", "moving"}, {"loft", "true"}}}, {"row", nil, [][2]string{{"loft", "true"}}},
		{"fleet", []string{"changed.toml", "lake"}, nil}, {"compare", []string{"changed.toml", "lake"}, nil}, {"built", nil, nil}, {"look", nil, nil},
	} {
		if c.names == nil {
			c.names = []string{"changed.toml"}
		}
		start := time.Now()
		err := answersWhole(t, about+": "+c.verb, d, c.verb, c.names, c.fields, World{Files: files})
		if err != nil {
			oneLine(t, about+": "+c.verb, err)
		}
		if took := time.Since(start); took > hang {
			t.Errorf("%s: %s took %v", about, c.verb, took)
		}
	}
}

// answersWhole asks a verb and reads back all that it makes. A panic is told with the design.
func answersWhole(t *testing.T, about string, d *design.Design, verb string, names []string, fields [][2]string, w World) error {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s: panic: %v", about, r)
		}
	}()
	r, err := Ask(verb, names, fields...)
	if err != nil {
		t.Fatal(about, err)
	}
	got, err := r.Do(w)
	if err != nil {
		return err
	}
	var page, numbers bytes.Buffer
	if err := text.Encode(&page, got.Report); err != nil {
		t.Errorf("%s: %v", about, err)
	}
	if got.Numbers != nil {
		if err := renderjson.Encode(&numbers, got.Numbers); err != nil || !json.Valid(numbers.Bytes()) {
			t.Errorf("%s: no numbers: %v", about, err)
		}
	}
	for _, b := range [][]byte{page.Bytes(), numbers.Bytes()} {
		if m := notANumber.Find(b); m != nil {
			t.Errorf("%s: tells %q", about, m)
		}
	}
	for _, o := range got.Outputs {
		var b bytes.Buffer
		if err := o.Write(&b); err != nil {
			return err
		}
		drawnSanely(t, about+", "+o.Name, d, o.Name, b.Bytes())
	}
	return nil
}

var notANumber = regexp.MustCompile(`\b(NaN|[+-]Inf|Infinity)\b|%!`)

// cutWhole reads a cutter's file back: no edge crosses itself, and none is longer than the
// boat with its cloth.
func cutWhole(t *testing.T, about string, d *design.Design, file []byte) {
	t.Helper()
	dxf, err := rendertest.ReadDXF(file)
	if err != nil {
		t.Errorf("%s: %v", about, err)
		return
	}
	for i, e := range dxf.On("CUT") {
		if e.Outline.Closed && rendertest.CrossesItself(e.Outline.Points(12)) {
			t.Errorf("%s: edge %d, within %+v, crosses itself", about, i+1, e.Outline.Bounds())
		}
		if b := e.Outline.Bounds(); math.Hypot(b.W(), b.H()) > float64(d.Hull.Length)+500 {
			t.Errorf("%s: edge %d runs over %.0f x %.0f mm", about, i+1, b.W(), b.H())
		}
	}
}

// drawnSanely reads a file back: nothing in it is no number, words stand on their sheet, and no
// line of it, cut off by its sheet or not, runs farther than the boat with its cloth is long.
func drawnSanely(t *testing.T, about string, d *design.Design, name string, file []byte) {
	t.Helper()
	if !strings.HasSuffix(name, ".pdf") {
		if m := notANumber.Find(file); m != nil {
			t.Errorf("%s: holds %q", about, m)
		}
		if strings.HasSuffix(name, ".dxf") {
			cutWhole(t, about, d, file)
		}
		return
	}
	pdf, err := rendertest.ReadPDF(file)
	if err != nil {
		t.Errorf("%s: %v", about, err)
		return
	}
	pages, err := pdf.Pages()
	if err != nil {
		t.Errorf("%s: %v", about, err)
	}
	far := 2*float64(d.Hull.Length) + 3000
	for i, p := range pages {
		sheet := rendertest.Box{X1: p.W, Y1: p.H}
		for _, s := range p.Strokes {
			for _, o := range s.Outlines {
				if b := rendertest.Around(o.Points(4)...); !b.Empty() && !sheet.Grow(far).HoldsBox(b) {
					t.Fatalf("%s: page %d: a line runs to %+v on a sheet of %.0f x %.0f mm", about, i+1, b, p.W, p.H)
				}
			}
		}
		for _, w := range p.Texts {
			if !sheet.Holds(w.At) {
				t.Errorf("%s: page %d: %q stands at %+v on a sheet of %.0f x %.0f mm", about, i+1, w.Words, w.At, p.W, p.H)
			}
		}
	}
}
