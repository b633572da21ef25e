package measure

import (
	"encoding"
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
)

var (
	_ encoding.TextMarshaler   = Angle(0)
	_ encoding.TextUnmarshaler = (*Angle)(nil)
)

// angleRows are texts that must be read; the wants are arithmetic.
var angleRows = []struct {
	name string
	text string
	want float64
	tol  float64
}{
	{"degrees", "12 deg", math.Pi / 15, 1e-16},
	{"long word", "12 degrees", math.Pi / 15, 1e-16},
	{"one", "1 degree", math.Pi / 180, 0},
	{"sign", "12\u00B0", math.Pi / 15, 1e-16},
	{"capitals", "12 Deg", math.Pi / 15, 1e-16},
	{"radians", "0.2 rad", 0.2, 0},
	{"mixed number", "22 1/2 deg", math.Pi / 8, 0},
	{"decimal", "22.5 deg", math.Pi / 8, 0},
	{"below zero", "-45 deg", -math.Pi / 4, 0},
	{"true minus", "\u221245\u00B0", -math.Pi / 4, 0},
	{"white space", " \u00A090\tdeg ", math.Pi / 2, 0},
	{"half turn", "180 deg", math.Pi, 0},
	{"full turn", "360 deg", 2 * math.Pi, 0},
	{"full turn in rad", "6.283185307179586 rad", 2 * math.Pi, 0},
	{"zero", "0 deg", 0, 0},
}

func TestParseAngle(t *testing.T) {
	for _, row := range angleRows {
		t.Run(row.name, func(t *testing.T) {
			got, err := ParseAngle(row.text)
			if err != nil {
				t.Fatalf("ParseAngle(%q): %v", row.text, err)
			}
			if d := math.Abs(float64(got) - row.want); !(d <= row.tol) {
				t.Errorf("ParseAngle(%q) = %v, want %v rad, off by %g", row.text, float64(got), row.want, d)
			}
		})
	}
}

var angleRefusals = []struct{ name, text, want string }{
	{"empty", "", "nothing is written"},
	{"bare number", "12", "no unit; write deg or rad"},
	{"unknown unit", "12 gon", `unknown unit "gon"; write deg or rad`},
	{"a length", "12 mm", `unknown unit "mm"`},
	{"minutes", "12\u00B0 30'", "one number and one unit"},
	{"junk", "12 deg x", `"x" comes after the unit`},
	{"by zero", "1/0 deg", "divides by zero"},
	{"comma", "12,5 deg", "write 3.5 deg, not 3,5"},
	{"exponent", "1e1 deg", "exponents are not read"},
	{"not a number", "NaN deg", "stands where a number should"},
	{"two signs", "--1 deg", "only once, at the very start"},
	{"over a turn", "360.0001 deg", "at most 360 deg"},
	{"over a turn, below zero", "-361 deg", "at most 360 deg"},
	{"over a turn in rad", "6.2832 rad", "at most 360 deg"},
	{"too small", "1/" + strings.Repeat("9", 50) + " rad", "too small"},
	{"too many bytes", strings.Repeat(" ", 70) + "12 deg", "76 bytes long"},
}

func TestParseAngleRefuses(t *testing.T) {
	for _, row := range angleRefusals {
		t.Run(row.name, func(t *testing.T) {
			got, err := ParseAngle(row.text)
			if err == nil {
				t.Fatalf("ParseAngle(%q) = %v, want an error", row.text, got)
			}
			checkError(t, err, row.want)
		})
	}
}

// Whole degrees and tenths must come back as they were typed, not as
// 11.999999999999998.
func TestAngleTextAsTyped(t *testing.T) {
	for tenth := -3600; tenth <= 3600; tenth++ {
		typed := strings.TrimSuffix(MM(float64(tenth)/10, 1), ".0") + " deg"
		a, err := ParseAngle(typed)
		if err != nil {
			t.Fatal(err)
		}
		if got := a.String(); got != typed {
			t.Errorf("%q is shown as %q", typed, got)
		}
	}
}

// The wish was 1e-12 and stable after one cycle; the exact arithmetic gives
// the same float64 at once.
func TestAngleTextRoundTrip(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	angles := []Angle{0, Angle(math.Copysign(0, -1)), MaxAngle, -MaxAngle, 1e-12, -1.2345678901234567e-40, 1e-40}
	for range 2000 {
		angles = append(angles, Angle((2*rnd.Float64()-1)*2*math.Pi), Angle(rnd.Float64()*1e-9))
	}
	for _, a := range angles {
		b, err := a.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		back := Angle(-1)
		if err := back.UnmarshalText(b); err != nil || back != a {
			t.Errorf("%g rad is written %q and read as %g, %v", float64(a), b, float64(back), err)
		}
	}
}

func TestAngleTextRefuses(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 6.3, -7, 1e-41} {
		if b, err := Angle(x).MarshalText(); err == nil {
			t.Errorf("MarshalText of %g = %q, want an error", x, b)
		}
	}
	if s := Angle(math.NaN()).String(); s != "?" {
		t.Errorf("NaN shows as %q, want ?", s)
	}
	a := Angle(1)
	if err := a.UnmarshalText([]byte("7")); err == nil || a != 1 {
		t.Errorf("after a refused text: %v, %v, want an error and 1 rad kept", a, err)
	}
}

// TestAngleShort holds a shortened angle to the one that is read, by exact fractions, from
// its degrees as they are written.
func TestAngleShort(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 6))
	for range 20000 {
		places := r.IntN(7)
		text := fmt.Sprintf("%.*f deg", places, 360*(2*r.Float64()-1))
		want, err := ParseAngle(text)
		if err != nil {
			t.Fatal(err)
		}
		off := Angle(float64(want) * (1 + 4e-16*float64(r.IntN(9)-4)))
		if got := off.Short(); got != want {
			t.Fatalf("%s: %v, from %v", text, got, off)
		}
	}
	if got := Angle(math.Inf(1)).Short(); !math.IsInf(float64(got), 1) && !math.IsNaN(float64(got)) {
		t.Errorf("an endless angle is shortened to %v", got)
	}
}

func FuzzParseAngle(f *testing.F) {
	for _, row := range angleRows {
		f.Add(row.text)
	}
	for _, row := range angleRefusals {
		f.Add(row.text)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := ParseAngle(s)
		if err != nil {
			return
		}
		b, err := a.MarshalText()
		if err != nil {
			t.Fatalf("ParseAngle(%q) = %g cannot be written: %v", s, float64(a), err)
		}
		if back, err := ParseAngle(string(b)); err != nil || back != a {
			t.Fatalf("%q gives %q, which gives %g, %v", s, b, float64(back), err)
		}
	})
}

// TestHundredths: every hundredth of a degree up to a turn is the float64 that is nearest to
// the exact product with pi, of 62 decimals, and is written as it is read.
func TestHundredths(t *testing.T) {
	for n := range int64(36001) {
		want, _ := radians(big.NewRat(n, 100)).Float64()
		text := strconv.FormatFloat(float64(n)/100, 'f', -1, 64) + " deg"
		if got, err := ParseAngle(text); err != nil || float64(got) != want || got.String() != text {
			t.Fatalf("%s is read as %.17g and written as %s, want %.17g: %v", text, float64(got), got, want, err)
		}
	}
}
