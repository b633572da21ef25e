package pool

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// table reads a published table: its rows as words, without the heading and remarks.
func table(t testing.TB, name string) (out [][]string) {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	for i, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		if !strings.HasPrefix(line, "#") && i > 0 {
			out = append(out, strings.Split(strings.TrimSpace(line), ","))
		}
	}
	return out[1:]
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.6f, want %.6f", what, got, want)
	}
}

func sq(v float64) float64 { return v * v }

func dyestuff(t testing.TB, but ...int) *Data {
	var all []Reading
	for i, row := range table(t, "dyestuff.csv") {
		if !has(but, i+1) {
			all = append(all, Reading{Value: number(t, row[1]), Side: -1, Unit: int(row[0][0] - 'A')})
		}
	}
	return New(all)
}

func has(all []int, v int) bool {
	for _, o := range all {
		if o == v {
			return true
		}
	}
	return false
}

// pastes are batches as sides and casks as units.
func pastes(t testing.TB, but ...int) *Data {
	var all []Reading
	for i, row := range table(t, "pastes.csv") {
		if !has(but, i+1) {
			batch := int(row[0][0] - 'A')
			all = append(all, Reading{Value: number(t, row[2]), Side: batch, Unit: 3*batch + int(row[1][0]-'a')})
		}
	}
	return New(all)
}

func fit(t testing.TB, d *Data) *Fit {
	t.Helper()
	f, ok := d.Of()
	if !ok {
		t.Fatal("cannot be fitted")
	}
	return f
}

// TestDyestuff: O. L. Davies, Statistical Methods in Research and Production (1947). REML
// and criterion are published (1764 and 2451, 319.6543); balanced, they have a closed form.
// Without rows 15-17 and 28-30: minimized in numpy and scipy.
func TestDyestuff(t *testing.T) {
	d := dyestuff(t)
	f := fit(t, d)
	near(t, "between batches", sq(f.Unit), 1764.05, 0.05)
	near(t, "within batches", sq(f.Chance), 2451.25, 0.01)
	near(t, "criterion", f.Criterion, 319.654277, 1e-6)
	mean, off := f.Mean()
	near(t, "mean", mean, 1527.5, 1e-6)
	near(t, "its standard error", off, 19.3834, 1e-3)
	k := f.Kind(0) // 90 %: Student's 2.015 of five degrees of freedom
	near(t, "low", k.Low, 1527.5-2.015048*19.3834, 0.01)

	f = fit(t, dyestuff(t, 15, 16, 17, 28, 29, 30))
	near(t, "unbalanced: between", sq(f.Unit), 984.241, 0.02)
	near(t, "unbalanced: within", sq(f.Chance), 2587.328, 0.02)
	near(t, "unbalanced: criterion", f.Criterion, 253.69139, 1e-5)
	mean, off = f.Mean()
	near(t, "unbalanced: mean", mean, 1539.5069, 1e-3)
	near(t, "unbalanced: error", off, 16.6868, 1e-3)
}

// TestDyestuffHeldOut: each batch guessed from the five others, worked out in numpy.
func TestDyestuffHeldOut(t *testing.T) {
	d := dyestuff(t)
	all := d.HeldOut(fit(t, d))
	want := [][2]float64{{-27.0, -0.4774}, {0.6, 0.0103}, {43.8, 0.8131}, {-35.4, -0.6391}, {87.0, 2.2545}, {-69.0, -1.4740}}
	for i, l := range all {
		near(t, "error", l.Error, want[i][0], 0.05)
		near(t, "z", l.Z, want[i][1], 1e-3)
		if l.Odd {
			t.Errorf("batch %d is named an outlier", i)
		}
	}
	rms, _, _ := Sum(all)
	near(t, "rms", rms, 52.01, 0.01)
}

// TestPastes: O. L. Davies and P. L. Goldsmith (1972), three casks in each of ten batches.
// Mean squares 27.4892, 17.5453 and 0.6780 are published, from which the closed form;
// unbalanced worked out in numpy and scipy.
func TestPastes(t *testing.T) {
	d := pastes(t)
	f := fit(t, d)
	near(t, "batches", sq(f.Side), 1.657309, 1e-3)
	near(t, "casks", sq(f.Unit), 8.433667, 1e-3)
	near(t, "tests", sq(f.Chance), 0.678, 1e-4)
	near(t, "criterion", f.Criterion, 246.990746, 1e-5)
	_, off := f.Mean()
	near(t, "error", off, 0.6769, 1e-4)
	for i, want := range []float64{0.8006, -0.2725, 0.7223, -0.1278, -1.5024, 0.3545, -0.0555, 1.1081, -0.4956, -0.5318} {
		near(t, "batch", f.shrunken(i), want, 1e-3)
	}
	f = fit(t, pastes(t, 4, 11, 18, 25, 32, 39, 46, 48, 49, 50, 51, 52, 53, 60))
	near(t, "unbalanced: batches", sq(f.Side), 2.32169, 2e-3)
	near(t, "unbalanced: casks", sq(f.Unit), 7.11863, 2e-3)
	near(t, "unbalanced: tests", sq(f.Chance), 0.37114, 1e-4)
	near(t, "unbalanced: criterion", f.Criterion, 185.21430, 1e-5)
	mean, off := f.Mean()
	near(t, "unbalanced: mean", mean, 59.94845, 1e-4)
	near(t, "unbalanced: error", off, 0.70958, 1e-4)
}

// TestBaseball: B. Efron and C. Morris (1975, 1977), 18 players after 45 times at bat. They
// keep 0.212 of what sets them apart, and miss the rest of the season 3.5 times less in the
// sum of squares than the averages of those 45 do.
func TestBaseball(t *testing.T) {
	var all []Reading
	mean := 0.0
	rows := table(t, "baseball18.csv")
	for _, row := range rows {
		mean += number(t, row[1]) / 45 / float64(len(rows))
	}
	for i, row := range rows {
		all = append(all, Reading{Value: number(t, row[1]) / 45, Side: i, Unit: -1, Known: mean * (1 - mean) / 45})
	}
	f := fit(t, New(all))
	raw, drawn := 0.0, 0.0
	for i, row := range rows {
		rest := number(t, row[3])
		raw += sq(all[i].Value - rest)
		drawn += sq(f.Drawn(i) - rest)
		near(t, row[0], f.Drawn(i), number(t, row[4]), 2e-5)
	}
	near(t, "kept", (f.Drawn(0)-mean)/(all[0].Value-mean), 0.212, 5e-4)
	near(t, "squared error of averages", raw, 0.0753, 1e-4)
	near(t, "squared error, drawn together", drawn, 0.0213, 1e-4)
}

// TestEightSchools: D. B. Rubin (1981); A. Gelman and others, Bayesian Data Analysis, 5.5.
// The likeliest spread is nothing, and the schools are not all said to be equal: with a flat
// prior of the spread they come to 11.4 to 5.1 (published as 11, 8, 6, 8, 5, 6, 11, 8).
func TestEightSchools(t *testing.T) {
	var all []Reading
	rows := table(t, "eight-schools.csv")
	for i, row := range rows {
		all = append(all, Reading{Value: number(t, row[1]), Side: i, Unit: -1, Known: sq(number(t, row[2]))})
	}
	f := fit(t, New(all))
	if f.Side != 0 {
		t.Errorf("spread of schools %g, want 0", f.Side)
	}
	mean, off := f.Mean()
	near(t, "mean", mean, 7.6856, 1e-4)
	near(t, "its error", off, 4.0719, 1e-4)
	near(t, "Q", f.disagree(), 4.7071, 1e-4)
	if f.Drawn(0)-f.Drawn(2) < 1 {
		t.Errorf("schools A and C are drawn to %.2f and %.2f: all the same", f.Drawn(0), f.Drawn(2))
	}
	s := f.Spread(Prior{})
	for i, row := range rows {
		in := s.Total(i)
		near(t, "school "+row[0], in.Is, number(t, row[3]), 0.15)
		if !(in.High-in.Low > 15) {
			t.Errorf("school %s: %.1f to %.1f is narrow", row[0], in.Low, in.High)
		}
	}
}

// TestStudent: tables of Student's distribution, in any textbook.
func TestStudent(t *testing.T) {
	for _, c := range []struct{ p, free, want float64 }{
		{0.95, 1, 6.313752}, {0.95, 2, 2.919986}, {0.975, 5, 2.570582}, {0.99, 16, 2.583487}, {0.95, 59, 1.671093},
		{0.05, 10, -1.812461}, {0.5, 3, 0}, {0.95, math.Inf(1), 1.644854},
	} {
		near(t, "quantile", Quantile(c.p, c.free), c.want, 1e-6)
	}
}

// TestLeftOut: an odd reading is held against what all others say, as a fit from which it is
// taken out has it with the same spreads.
func TestLeftOut(t *testing.T) {
	for _, i := range []int{0, 7, 31, 59} {
		d := pastes(t)
		d.Readings[i].Value += 40
		f := fit(t, d)
		odd := f.odd(0)
		if len(odd) == 0 {
			t.Fatalf("reading %d is not named", i)
		}
		for _, one := range odd {
			r := d.Readings[one.Reading]
			row := make([]float64, f.loose.s.wide)
			f.loose.s.columns(row, r.Kind, r.Side)
			rest := *d
			rest.Readings = append(append([]Reading{}, d.Readings[:one.Reading]...), d.Readings[one.Reading+1:]...)
			want, _ := newSystem(&rest, true).solve(f.loose.side(), f.loose.unit).reading(row, r.Unit)
			near(t, "guess", one.Guess, want, 1e-6)
		}
	}
}

// shrunken is what a side differs from its kinds' mean, drawn together with the likeliest
// spread taken for known, and how much of its own difference it keeps.
func (f *Fit) shrunken(side int) float64 {
	if f.d.sides == 0 {
		return 0
	}
	c := f.d.kinds + side
	return f.loose.scale[c] * f.loose.is[c]
}

// disagree is how far values with known errors lie apart: the sum of their squares over
// their own variances, which is the count less one where they are all the same.
func (f *Fit) disagree() float64 {
	sum, weights := 0.0, 0.0
	for _, r := range f.d.Readings {
		sum, weights = sum+r.Value/r.Known, weights+1/r.Known
	}
	mean, out := sum/weights, 0.0
	for _, r := range f.d.Readings {
		out += (r.Value - mean) * (r.Value - mean) / r.Known
	}
	return math.Max(out, 0)
}
