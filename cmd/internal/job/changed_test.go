package job

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/render/rendertest"
)

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

// changer alters design files at random, within what each key accepts and around it.
type changer struct {
	*rand.Rand
	accepts map[string]string   // the range of a key, "8 to 60 mm"
	words   map[string][]string // what a key may say
}

func newChanger(r *rand.Rand) *changer {
	c := &changer{r, map[string]string{}, map[string][]string{
		"gunwale.glued": {"straight", "bent", "form"}, "bow.made": {"solid", "plywood", "laminated"},
		"ribs.species": {"white ash", "white oak", "sitka spruce", "western redcedar"}, "gunwale.species": {"sitka spruce", "white ash", "western redcedar"},
		"crew.posture": {"kneeling", "floor", "bench"},
		"title":        {"A", "Boat / 2", "CON", strings.Repeat("Long name ", 12), "Ærø ü 船", "a\u202eb"},
	}}
	c.ranges("", reflect.TypeFor[design.Design]())
	for _, k := range design.Keys() {
		if all := quoted.FindAllStringSubmatch(k.Want, -1); len(all) > 1 && strings.Contains(k.Want, `" or "`) && !strings.Contains(k.Want, "unit") {
			for _, w := range all {
				c.words[k.Name] = append(c.words[k.Name], w[1])
			}
		}
		if k.Want == "true or false" {
			c.words[k.Name] = []string{"true", "false"}
		}
	}
	return c
}

var quoted = regexp.MustCompile(`"([^"]*)"`)

// ranges gathers what keys say they accept.
func (c *changer) ranges(prefix string, table reflect.Type) {
	for i := range table.NumField() {
		f := table.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("toml"), ",")
		inner := f.Type
		if inner.Kind() == reflect.Slice || inner.Kind() == reflect.Pointer {
			inner = inner.Elem()
		}
		if inner.Kind() == reflect.Struct {
			c.ranges(prefix+name+".", inner)
		} else if a := f.Tag.Get("accepts"); strings.Contains(a, " to ") {
			c.accepts[prefix+name] = a
		}
	}
}

// outfits are tables that may be added; each says all that it must.
var outfitTables = []string{
	"\n[outfit.sail]\nrig = 'lug'\n", "\n[outfit.sail]\nrig = 'spritsail'\nwind = 4\n", "\n[outfit.sail]\nrig = 'leg-of-mutton'\nreefs = 2\n",
	"\n[outfit.pair]\npurpose = 'open'\n", "\n[outfit.row]\nbody = 'man'\nstature = '1800 mm'\nmass = 80\n",
}

// change alters one to six lines, and now and then a whole table.
func (c *changer) change(file string) (changed, about string) {
	lines := strings.Split(file, "\n")
	var told []string
	if c.IntN(6) == 0 {
		lines, told = c.tables(lines)
	}
	keys := keysOf(lines)
	var with []int
	for i, k := range keys {
		_, value, _ := strings.Cut(lines[i], "=")
		if k != "" && !strings.HasSuffix(k, "name") && k != "for" && (len(c.words[k]) > 0 || aFigure.MatchString(value) && k != "title") {
			with = append(with, i)
		}
	}
	for range 1 + c.IntN(6) {
		i := with[c.IntN(len(with))]
		lines[i] = c.line(keys[i], lines[i])
		told = append(told, keys[i]+strings.TrimLeft(lines[i], "abcdefghijklmnopqrstuvwxyz_"))
	}
	file = strings.Join(lines, "\n")
	if c.IntN(8) == 0 && !strings.Contains(file, "[outfit") {
		extra := outfitTables[c.IntN(len(outfitTables))]
		file, told = file+extra, append(told, strings.Join(strings.Fields(extra), " "))
	}
	return file, strings.Join(told, "; ")
}

// keysOf names the key of each line, "" where it has none.
func keysOf(lines []string) []string {
	out, table := make([]string, len(lines)), ""
	for i, l := range lines {
		switch key, _, is := strings.Cut(l, " = "); {
		case strings.HasPrefix(l, "["):
			table = strings.Trim(l, "[]") + "."
		case is && !strings.HasPrefix(l, "#"):
			out[i] = table + key
		}
	}
	return out
}

// tables leaves out one of the tables that there may be several of, or gives it twice.
func (c *changer) tables(lines []string) ([]string, []string) {
	var heads []int
	for i, l := range lines {
		if strings.HasPrefix(l, "[[") {
			heads = append(heads, i)
		}
	}
	if len(heads) == 0 {
		return lines, nil
	}
	from := heads[c.IntN(len(heads))]
	to := from + 1
	for to < len(lines) && !strings.HasPrefix(lines[to], "[") {
		to++
	}
	if c.IntN(2) == 0 {
		return slices.Delete(slices.Clone(lines), from, to), []string{"without " + lines[from]}
	}
	again := slices.Clone(lines[from:to])
	for i, k := range keysOf(again) {
		if strings.HasSuffix(k, ".at") || strings.HasSuffix(k, ".name") {
			again[i] = aFigure.ReplaceAllStringFunc(again[i], func(s string) string { return c.figure("", s) })
		}
		if strings.HasSuffix(k, ".name") {
			again[i] = strings.TrimSuffix(again[i], "'") + " 2'"
		}
	}
	return slices.Insert(slices.Clone(lines), to, again...), []string{lines[from] + " twice"}
}

var aFigure = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)

// line alters what a key says, or leaves it out.
func (c *changer) line(key, line string) string {
	name, value, _ := strings.Cut(line, " = ")
	if c.IntN(25) == 0 {
		return "# without " + name
	}
	if w := c.words[key]; len(w) > 0 {
		quote := "'"
		if value == "true" || value == "false" {
			quote = ""
		}
		return name + " = " + quote + w[c.IntN(len(w))] + quote
	}
	return name + " = " + aFigure.ReplaceAllStringFunc(value, func(s string) string { return c.figure(key, s) })
}

// figure alters a figure: mostly by a little, now and then to anything the key accepts, to
// a limit of that, past it, to nothing, or turned round.
func (c *changer) figure(key, s string) string {
	var v, lo, hi float64
	fmt.Sscan(s, &v)
	n, _ := fmt.Sscanf(c.accepts[key], "%g to %g", &lo, &hi)
	switch p := c.IntN(40); {
	case n == 2 && p < 4:
		v = lo + (hi-lo)*c.Float64()
	case n == 2 && p < 6:
		v = []float64{lo, hi}[c.IntN(2)]
	case n == 2 && p == 6:
		v = []float64{lo - 0.01*(hi-lo), hi + 0.01*(hi-lo)}[c.IntN(2)]
	case p == 7:
		v = 0
	case p == 8:
		v = -v
	case p == 9:
		v *= 10
	case p == 10:
		v /= 10
	case p < 20:
		v *= 0.6 + 0.9*c.Float64()
	default:
		v *= 0.88 + 0.26*c.Float64()
	}
	if !strings.Contains(s, ".") && v == float64(int(v)) || strings.HasSuffix(key, "plies") || strings.HasSuffix(key, "coats") || strings.HasSuffix(key, "slats") || strings.HasSuffix(key, "spare") {
		return fmt.Sprint(int(v + 0.5))
	}
	return fmt.Sprintf("%.5g", v)
}

// besides are the files that go with a changed design: a course, builds that are told of, offsets
// of a boat, all at random.
func besides(t *testing.T, r *rand.Rand, file string) map[string][]byte {
	t.Helper()
	var class bytes.Buffer
	class.WriteString("name,use,weight_kg,stature_cm\n")
	for i := range 2 {
		fmt.Fprintf(&class, "Builder %d,%s,%.1f,%.0f\n", i, []string{"pack", "solo"}[r.IntN(2)], 40+80*r.Float64(), 145+60*r.Float64())
	}
	offsets, err := os.ReadFile("../../../testdata/offsets/fig31.csv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(offsets), "\n")
	for range 1 + r.IntN(4) {
		i := len(lines)/2 + r.IntN(len(lines)/2)
		if station, at, is := strings.Cut(lines[i], ","); is {
			lines[i] = station + "," + aFigure.ReplaceAllStringFunc(at, func(s string) string { return (&changer{Rand: r}).figure("", s) })
		}
	}
	return map[string][]byte{
		"changed.toml": []byte(file), "class.csv": class.Bytes(), "offsets.csv": []byte(strings.Join(lines, "\n")),
		"builds.csv": []byte("builder,design,measures,notes\nOne,changed.toml,measured.csv,\n"),
	}
}

// filledIn is a card of a frame that was built by hands that miss, of a boat's numbers.
func filledIn(r *rand.Rand, numbers []byte) []byte {
	n, err := rendertest.ReadNumbers(numbers)
	if err != nil {
		return nil
	}
	card := []byte("rib,beam_mm,depth_mm,free_width_mm,broken\n")
	for _, rib := range n.Ribs {
		if r.IntN(3) > 0 {
			card = fmt.Appendf(card, "%s,%.0f,%.0f,,\n", rib.Rib, 2*rib.HalfBreadth+6*r.NormFloat64(), rib.Depth+4*r.NormFloat64())
		}
	}
	return card
}
