package formula

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/wording"
)

// env is what the tests' formulas may use.
func env() []Input {
	return []Input{
		{Name: "weight", Kind: Of(Mass), Doc: "of the paddler"},
		{Name: "stature", Kind: Of(Length)},
		{Name: "water", Kind: Kind{Class: Text}},
		{Name: "draft", Kind: Of(Length), Afloat: true},
	}
}

func compile(t testing.TB, text string) *Program {
	t.Helper()
	p, err := Compile(Source{"own", text}, nil, env())
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return p
}

func ran(t testing.TB, text string) *Run {
	t.Helper()
	r := compile(t, text).NewRun()
	for name, v := range map[string]Value{"weight": Num(62), "stature": Num(1680), "water": Word("open"), "draft": Num(100)} {
		if err := r.Set(name, v); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Work(nil); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return r
}

// TestValues has formulas whose values are plain arithmetic, worked by hand.
func TestValues(t *testing.T) {
	for _, c := range []struct {
		formula string
		want    float64
		dim     Dim
	}{
		{"2 + 3 * 4", 14, Plain},
		{"(2 + 3) * 4", 20, Plain},
		{"10 - 4 - 3", 3, Plain},
		{"12 / 3 / 2", 2, Plain},
		{"-2 ^ 2", -4, Plain},
		{"(-2) ^ 2", 4, Plain},
		{"2 ^ 0.5", math.Sqrt2, Plain},
		{"1 in", 25.4, Length},
		{"2 ft + 3 in", 685.8, Length},
		{"1.2 m - 20 cm", 1000, Length},
		{"1 lb", 0.45359237, Mass},
		{"30 deg", math.Pi / 6, Angle},
		{"sin(30 deg)", 0.5, Plain},
		{"tan(45 deg) * 100 mm", 100, Length},
		{"stature / 2", 840, Length},
		{"sqrt(3 mm * 12 mm)", 6, Length},
		{"cbrt(27 mm3)", 3, Length},
		{"(3 mm) ^ 2", 9, Area},
		{"550 g/m2 * 2 m2", 1.1, Mass},
		{"350 kg/m3 * 1 L", 0.35, Mass},
		{"36 km/h", 10000, Speed},
		{"1 kn", 1852000.0 / 3600, Speed},
		{"95 %", 0.95, Plain},
		{"min(3 mm, 1 cm, 2 mm)", 2, Length},
		{"max(3, 5)", 5, Plain},
		{"clamp(12, 3, 10)", 10, Plain},
		{"round(713 mm, 5 mm)", 715, Length},
		{"ramp(15, 10, 1 mm, 20, 3 mm)", 2, Length},
		{"ramp(5, 10, 1 mm, 20, 3 mm)", 1, Length},
		{"ramp(99, 10, 1 mm, 20, 3 mm)", 3, Length},
		{`if water == "open" then 1 else 2`, 1, Plain},
		{`if not water == "open" or weight < 10 kg then 1 else 2`, 2, Plain},
		{"1 + (if weight > 60 kg and stature > 1 m then 1 else 2)", 2, Plain},
		{"floor(2.7) + ceil(2.2)", 5, Plain},
	} {
		t.Run(c.formula, func(t *testing.T) {
			r := ran(t, "v = "+c.formula)
			v, k, _ := r.Value("v")
			if k != Of(c.dim) {
				t.Errorf("is %s, want %s", k, c.dim)
			}
			if !(math.Abs(v.Num-c.want) <= 1e-12*math.Max(1, math.Abs(c.want))) {
				t.Errorf("= %v, want %v", v.Num, c.want)
			}
		})
	}
}

// TestRefuses has files with something wrong, and what must be said of it.
func TestRefuses(t *testing.T) {
	deep := strings.Repeat("(", 100) + "1" + strings.Repeat(")", 100)
	for _, c := range []struct{ name, text, want string }{
		{"mm to kg", "a = 3 mm\nb = a + 2 kg", "own:2:7: b: a weight (kg) cannot be added to a length (mm)"},
		{"kg from mm", "b = 3 mm - weight", "own:1:10: b: a weight (kg) cannot be taken from a length (mm)"},
		{"bare number to mm", "b = stature + 20", "own:1:13: b: a plain number cannot be added to a length (mm)"},
		{"mm with kg", "b = if stature < weight then 1 else 2", "own:1:16: b: a length (mm) cannot be compared with a weight (kg)"},
		{"min of unlike", "b = min(3 mm, 2 kg)", "own:1:5: b: min: value 2 is a weight (kg) and value 1 is a length (mm)"},
		{"branches unlike", "b = if true then 1 mm else 1 kg", "own:1:5: b: then gives a length (mm) and else gives a weight (kg)"},
		{"sine of a number", "b = sin(30)", "own:1:5: b: sin: the value is a plain number; accepted: an angle (deg)"},
		{"root of mm", "b = sqrt(3 mm)", "no such root in whole units"},
		{"unknown name", "b = statur / 2", "own:1:5: b: nothing is called statur; the nearest name is stature"},
		{"unknown function", "b = mim(1, 2)", `own:1:5: no function "mim"; there are min`},
		{"unknown unit", "b = 3 furlong", `own:1:5: unknown unit "furlong" after 3`},
		{"circle", "a = b + 1 mm\nb = c\nc = a", "own:1:1: a: needs itself: a needs b needs c, which needs a; break the circle"},
		{"own circle", "a = a", "own:1:1: a: needs itself: a, which needs a"},
		{"twice", "a = 1\na = 2", "own:2:1: a: is given twice, first on line 1"},
		{"given", "weight = 3 kg", "own:1:1: weight: is given from outside"},
		{"unit as name", "mm = 3", `own:1:1: "mm" is a unit`},
		{"word as name", "max = 3", `own:1:1: "max" is a word of the formulas`},
		{"capitals", "Beam = 3 mm", `own:1:1: "Beam" has capitals`},
		{"no equals", "a 3", `own:1:3: "3" stands where "=" should`},
		{"two on a line", "a = 3 b = 4", `own:1:5: unknown unit "b"`},
		{"left over", "a = (3) b", `own:1:9: "b" comes after the formula has ended`},
		{"open bracket", "a = (3 + 4", "own:1:11: the end of the statement stands where"},
		{"nothing", "a = ", "the end of the statement stands where a value should"},
		{"deep", "a = " + deep, "more than 60 deep"},
		{"exponent", "a = 1e9", "own:1:5: exponents are not read"},
		{"half a number", "a = 3.", "digits on both sides"},
		{"long number", "a = " + strings.Repeat("9", 400), "the number has 400 digits"},
		{"two comparisons", "a = 1 < 2 < 3", "two comparisons stand in a row"},
		{"open quotes", `a = "pack`, "own:1:5: the quotes are not closed"},
		{"strange sign", "a = 3 $ 4", `own:1:7: '$' means nothing here`},
		{"check of a number", "check a = 3", "own:1:11: a: is a plain number; accepted: a comparison"},
		{"guess of a formula", "guess stature = 3 mm", "own:1:7: stature: only a value found afloat takes a guess"},
		{"guess in kg", "guess draft = 3 kg", "draft: is a weight (kg); accepted: a length (mm)"},
		{"limits of none", "limits beam = [1 mm, 2 mm]", "limits are for a value that has a formula"},
		{"limits reversed", "a = 3 mm\nlimits a = [2 mm, 1 mm]", "the lower first"},
		{"reason", "a = 3 # {bea}", "the reason shows {bea}, which is no name"},
		{"units grow", "a = 1 m3\nb = a^4\nc = b * b", "the units grow past the power of 12"},
		{"no text", "a = 3\x00", "is no UTF-8 text"},
		{"huge", strings.Repeat("# and so on\n", 30000), "is larger than 256 kB"},
		{"many parts", "a = 1" + strings.Repeat("+1", 30000), "more than 40000 parts"},
		{"many statements", many(2500), "more than 2000 statements"},
		{"list of many", "a = [1" + strings.Repeat(",1", 60) + "]", "more than 50 values"},
		{"use", `use "other"`, "own:1:5: no other file can be used here"},
		{"use late", "a = 3\nuse \"other\"", "use stands before every other statement"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Compile(Source{"own", c.text}, nil, env())
			var f *wording.Fault
			if !errors.As(err, &f) {
				t.Fatalf("got %v, want a fault with %q", err, c.want)
			}
			if !strings.Contains(err.Error(), c.want) {
				t.Errorf("says %q, want %q", err, c.want)
			}
			if strings.ContainsAny(err.Error(), "\n\r") || len(err.Error()) > 700 {
				t.Errorf("the message is no line: %q", err)
			}
		})
	}
}

func many(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "a%d = 1\n", i)
	}
	return b.String()
}

// TestNoAnswer has formulas that are well written and have no value.
func TestNoAnswer(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"by zero", "a = 3 / 0", "own:1:7: a: divides by zero"},
		{"by a zero value", "z = weight - 62 kg\na = 3 / z", "own:2:7: a: divides by z, which is 0 kg"},
		{"grows", "a = 2 ^ 1000\nb = a * a", "own:2:7: b: the result is no number"},
		{"root below zero", "a = sqrt(0 - 4)", "a: sqrt(-4): takes a value from 0"},
		{"broken power", "a = (-2) ^ 0.5", "a: the result is no number"},
		{"clamp crossed", "a = clamp(1, 3, 2)", "clamp(1, 3, 2): the lower bound is above the upper bound"},
		{"asin", "a = asin(2)", "asin(2): takes a value from -1 to 1"},
		{"log", "a = log(0)", "log(0): takes a value"},
		{"ramp", "a = ramp(1, 2, 1 mm, 2, 2 mm)", "ramp(1, 2, 1 mm, 2, 2 mm): it ends before it begins"},
		{"round", "a = round(1, 0)", "round(1, 0): the step is not more than 0"},
		{"short stock", "a = scarfs(5 m, 1 m, 80 mm)", "stock of 1000 mm is too short"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := compile(t, c.text).NewRun()
			if err := r.Set("weight", Num(62)); err != nil {
				t.Fatal(err)
			}
			err := r.Work(nil)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("says %v, want %q", err, c.want)
			}
		})
	}
}

// TestBombs has files made to run long: a value that doubles 1000 times over,
// and names that each use the one before many times. Each value is worked out
// once, so both end at once, with a fault or an answer.
func TestBombs(t *testing.T) {
	var b strings.Builder
	b.WriteString("a0 = 2\n")
	for i := range 1500 {
		fmt.Fprintf(&b, "a%d = a%d * a%d + a%d - a%d\n", i+1, i, i, i, i)
	}
	r := compile(t, b.String()).NewRun()
	if err := r.Work(nil); err == nil || !strings.Contains(err.Error(), "the result is no number") {
		t.Errorf("squares without end: %v", err)
	}
	if _, err := r.Explain("a1500"); err != nil {
		t.Error(err)
	}
	b.Reset()
	b.WriteString("a0 = 1\n")
	for i := range 1500 {
		fmt.Fprintf(&b, "a%d = (a%d + a%d) / 2\n", i+1, i, i)
	}
	if got := ran(t, b.String()).Number("a1500"); got != 1 {
		t.Errorf("means of equals: %v, want 1", got)
	}
}

// TestUse replaces a value of a used file and keeps the rest.
func TestUse(t *testing.T) {
	files := map[string]string{
		"base":   "length = 3500 mm\nbeam = length / 5\nhalf = beam / 2",
		"circle": "use \"circle2\"", "circle2": "use \"circle\"",
	}
	open := func(name string) (Source, error) {
		text, ok := files[name]
		if !ok {
			return Source{}, fmt.Errorf("no file %q", name)
		}
		return Source{name, text}, nil
	}
	p, err := Compile(Source{"own", "use \"base\"\nbeam = 600 mm # narrower"}, open, env())
	if err != nil {
		t.Fatal(err)
	}
	r := p.NewRun()
	if err := r.Work(nil); err != nil {
		t.Fatal(err)
	}
	if got := r.Number("half"); got != 300 {
		t.Errorf("half = %v, want 300: the own beam must count in the used file's formulas", got)
	}
	for name, want := range map[string]string{"circle": "use one another in a circle", "none": `no file "none"`} {
		if _, err := Compile(Source{"own", `use "` + name + `"`}, open, env()); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
}

// TestAfloat tells apart what can be worked out ashore.
func TestAfloat(t *testing.T) {
	p := compile(t, "guess draft = 95 mm\na = stature / 2\nb = draft * 2\nc = b + a")
	for name, want := range map[string]string{"a": "[]", "b": "[draft]", "c": "[draft]"} {
		if got := fmt.Sprint(p.AfloatBehind(name)); got != want {
			t.Errorf("behind %s stands %q, want %q", name, got, want)
		}
	}
	r := p.NewRun()
	if err := r.Set("stature", Num(1000)); err != nil {
		t.Fatal(err)
	}
	if err := r.Work(nil); err != nil {
		t.Fatal(err)
	}
	if got := r.Number("c"); got != 690 {
		t.Errorf("from the guess c = %v, want 690", got)
	}
	if err := r.Set("draft", Num(100)); err != nil {
		t.Fatal(err)
	}
	if err := r.Work(p.Behind("c")); err != nil {
		t.Fatal(err)
	}
	if got := r.Number("c"); got != 700 {
		t.Errorf("afloat c = %v, want 700", got)
	}
}

// TestChecks reads margins and reasons out of a file's checks.
func TestChecks(t *testing.T) {
	r := ran(t, "b = 712 mm\ncheck beam = b <= 700 mm # {b} is more than an arm's reach\ncheck wet = draft >= 80 mm\ncheck quiet = water == \"open\"")
	all, err := r.Checks()
	if err != nil {
		t.Fatal(err)
	}
	if v := all[0]; v.Passed || v.Margin() != -12 || v.Finding().String() != "beam: 712 mm, wanted at most 700 mm; 712 mm is more than an arm's reach" {
		t.Errorf("%+v says %q", v, v.Finding().String())
	}
	if v := all[1]; !v.Passed || v.Margin() != 20 {
		t.Errorf("%+v", v)
	}
	if v := all[2]; !v.Passed || v.Sized {
		t.Errorf("%+v", v)
	}
}

// TestExplain gives each step once, with its formula and value.
func TestExplain(t *testing.T) {
	r := ran(t, "reach = stature / 2 # arms\nbeam = round(min(reach - 20 mm, 900 mm), 5 mm) # of {reach}\n  # and no more")
	steps, err := r.Explain("beam")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range steps {
		got = append(got, fmt.Sprint(s.Depth, " ", s.Name, " ", s.Value, " ", s.Formula, " ", s.Where, " ", s.Reason))
	}
	want := []string{
		"0 beam 820 mm round(min(reach - 20 mm, 900 mm), 5 mm) own:2 of 840 mm and no more",
		"1 reach 840 mm stature / 2 own:1 arms",
		"2 stature 1680 mm  given ",
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if got := r.HeldBy("beam"); got != "reach - 20 mm" {
		t.Errorf("held by %q", got)
	}
	if _, err := r.Explain("baem"); err == nil || !strings.Contains(err.Error(), "the nearest name is beam") {
		t.Error(err)
	}
}

func TestFix(t *testing.T) {
	r := ran(t, "a = stature / 2\nb = a * 2")
	if err := r.Fix("a", Num(100)); err != nil {
		t.Fatal(err)
	}
	if err := r.Work(nil); err != nil {
		t.Fatal(err)
	}
	if got := r.Number("b"); got != 200 {
		t.Errorf("b = %v, want 200", got)
	}
	for name, v := range map[string]Value{"stature": Num(3), "nobody": Num(3), "a": Num(math.NaN())} {
		if err := r.Fix(name, v); err == nil {
			t.Errorf("%s was fixed at %v", name, v)
		}
	}
	if err := r.Set("weight", Num(math.Inf(1))); err == nil {
		t.Error("an infinite weight was taken")
	}
}

func TestQuantity(t *testing.T) {
	for text, want := range map[string]struct {
		v float64
		d Dim
	}{
		"62 kg": {62, Mass}, "62kg": {62, Mass}, "110mm": {110, Length}, "137 lb": {62.14215469, Mass},
		"168 cm": {1680, Length}, `5'-6"`: {1676.4, Length}, "5 ft 6 in": {1676.4, Length}, "4 km/h": {10000.0 / 9, Speed},
		"12 %": {0.12, Plain}, "3": {3, Plain}, "-5 mm": {-5, Length}, "33 1/2 in": {850.9, Length},
	} {
		v, d, err := Quantity(text)
		if err != nil || d != want.d || math.Abs(v-want.v) > 1e-9 {
			t.Errorf("%s: %v %v %v, want %v %v", text, v, d, err, want.v, want.d)
		}
	}
	for _, text := range []string{"", "kg", "62 kilo", "62 kg 3", "1,5 kg", "--3 mm", "1e3 mm", strings.Repeat("1", 100)} {
		if v, d, err := Quantity(text); err == nil {
			t.Errorf("%q is read as %v %v", text, v, d)
		}
	}
}

// FuzzCompile: whatever a file holds, it is refused in one line or worked out
// without a value that is no number.
func FuzzCompile(f *testing.F) {
	for _, s := range []string{"a = 3 mm + 2 in # why {a}", "check a = 1 < 2", "guess draft = 3 mm", "a = [1, 2]\nlimits a = [1, 2]",
		"a = if water == \"x\" then 1 else 2", "a =\n  3\n  # more\nb = -a ^ 2", "use \"x\"", "tell a = scarfs(5 m, 4 m, 80 mm)"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := Compile(Source{"own", text}, nil, env())
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\r") {
				t.Fatalf("the message is no line: %q", err)
			}
			return
		}
		r := p.NewRun()
		if r.Work(nil) != nil {
			return
		}
		for _, n := range p.Names() {
			if v, _, _ := r.Value(n); bad(v) {
				t.Fatalf("%s is %v", n, v)
			}
			if _, err := r.Explain(n); err != nil {
				t.Fatal(err)
			}
			r.HeldBy(n)
		}
		if _, err := r.Checks(); err != nil && strings.Contains(err.Error(), "\n") {
			t.Fatal(err)
		}
	})
}
