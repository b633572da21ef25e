package measure

import (
	"encoding"
	"fmt"
	"math"
	"strings"
	"testing"
)

var (
	_ encoding.TextMarshaler   = Length(0)
	_ encoding.TextUnmarshaler = (*Length)(nil)
)

// lengthRows are texts that must be read. Every want is arithmetic on the
// international inch of 25.4 mm and foot of 304.8 mm (yard and pound agreement
// of 1959); tol 0 asks for the very float64.
var lengthRows = []struct {
	name string
	text string
	want float64
	tol  float64
}{
	{"millimetres", "3500 mm", 3500, 0},
	{"no space", "3500mm", 3500, 0},
	{"centimetres", "350 cm", 3500, 0},
	{"metres", "3.5 m", 3500, 0},
	{"metres to the mm", "4.267 m", 4267, 0},
	{"a tenth", "0.1 mm", 0.1, 0},
	{"no zero before the point", ".5 in", 12.7, 0},
	{"leading zeros are decimal", "010/16 in", 15.875, 0},
	{"capitals", "12 MM", 12, 0},
	{"mixed case", "2 Feet 3 Inches", 685.8, 0},
	{"one inch", "1 in", 25.4, 0},
	{"inch", "1 inch", 25.4, 0},
	{"inches", "34 inches", 863.6, 0},
	{"feet", "14 ft", 4267.2, 0},
	{"foot", "1 foot", 304.8, 0},
	{"feet with a fraction", "5 1/2 ft", 1676.4, 0},
	{"fraction", "7/8 in", 22.225, 0},
	{"fraction of a mm", "3/4 mm", 0.75, 0},
	{"fraction with spaces", "7 / 8 in", 22.225, 0},
	{"improper fraction", "9/8 in", 28.575, 0},
	{"third", "1/3 in", 127.0 / 15, 0},
	{"sixteenth", `1/16"`, 1.5875, 0},
	{"three quarters", `3/4"`, 19.05, 0},
	{"mixed", "34 1/2 in", 876.3, 0},
	{"mixed with hyphen", "34-1/2 in", 876.3, 0},
	{"hull length", `13'-11 7/8"`, 4264.025, 0},
	{"hull length, space", `13' 11 7/8"`, 4264.025, 0},
	{"hull length, words", "13 ft 11 7/8 in", 4264.025, 0},
	{"hull length, all hyphens", `13'-11-7/8"`, 4264.025, 0},
	{"hull length, spaced hyphen", `13' - 11 7/8"`, 4264.025, 0},
	{"hull length, primes", "13\u2032-11 7/8\u2033", 4264.025, 0},
	{"hull length, curly", "13\u2019 11 7/8\u201D", 4264.025, 0},
	{"hull length, opening curly", "13\u2018 11 7/8\u201C", 4264.025, 0},
	{"hull length, fraction slash", "13' 11 7\u20448\"", 4264.025, 0},
	{"hull length, one character", "13'11\u215E\"", 4264.025, 0},
	{"hull length, decimal inches", `13' 11.875"`, 4264.025, 0},
	{"hull length, word and mark", `13 ft 11 7/8"`, 4264.025, 0},
	{"no inches but a fraction", `5' 3/4"`, 1543.05, 0},
	{"zero inches and a fraction", `5'-0 3/4"`, 1543.05, 0},
	{"nothing between", `10'6"`, 3200.4, 0},
	{"two apostrophes", "10'6''", 3200.4, 0},
	{"two curly apostrophes", "10\u20196\u2019\u2019", 3200.4, 0},
	{"twelve inches or more", `5' 14"`, 1879.6, 0},
	{"half behind", "6\u00BD\"", 165.1, 0},
	{"half behind, space", "6 \u00BD in", 165.1, 0},
	{"half behind, hyphen", "6-\u00BD in", 165.1, 0},
	{"half alone", "\u00BD in", 12.7, 0},
	{"quarter", "\u00BC in", 6.35, 0},
	{"three quarters, one character", "\u00BE in", 19.05, 0},
	{"two thirds", "\u2154 in", 254.0 / 15, 0},
	{"four fifths", "\u2158 in", 20.32, 0},
	{"five sixths", "\u215A in", 127.0 / 6, 0},
	{"eighth", "\u215B in", 3.175, 0},
	{"white space", "\t 34 \u00A0 1/2\u202F in \n", 876.3, 0},
	{"minus covers the whole", `-1'6"`, -457.2, 0},
	{"minus covers the fraction", "-34 1/2 in", -876.3, 0},
	{"true minus", "\u22121'6\"", -457.2, 0},
	{"plus", "+12 mm", 12, 0},
	{"sign and space", "- 12 mm", -12, 0},
	{"zero", "0 mm", 0, 0},
	{"the limit", "1000000 mm", 1e6, 0},
	{"the limit in m", "-1000 m", -1e6, 0},
	{"tiny", "1/3000000000 mm", 1.0 / 3e9, 0},
}

func TestParseLength(t *testing.T) {
	for _, row := range lengthRows {
		t.Run(row.name, func(t *testing.T) {
			got, err := ParseLength(row.text)
			if err != nil {
				t.Fatalf("ParseLength(%q): %v", row.text, err)
			}
			if d := math.Abs(float64(got) - row.want); !(d <= row.tol) {
				t.Errorf("ParseLength(%q) = %v, want %v mm, off by %g", row.text, float64(got), row.want, d)
			}
		})
	}
}

// lengthRefusals are texts that must be refused, each with a piece of the
// reason that a reader has to see.
var lengthRefusals = []struct{ name, text, want string }{
	{"empty", "", "nothing is written"},
	{"blank", " \t", "nothing is written"},
	{"sign only", "-", "a number is missing"},
	{"bare number", "12", "no unit; write mm, cm, m, in, ft"},
	{"bare fraction", "34 1/2", "no unit"},
	{"bare inches", "5' 6", "only inches may follow feet"},
	{"junk", "12 mm x", `"x" comes after the unit`},
	{"full stop", "12 mm.", `"." comes after the unit`},
	{"junk after feet", "12 ft x", `"x" comes after the unit`},
	{"unit only", "mm", "stands where a number should"},
	{"unknown unit", "12 furlong", `unknown unit "furlong"; write mm`},
	{"degrees", "12 deg", `unknown unit "deg"`},
	{"by zero", "1/0 in", "1/0 divides by zero"},
	{"mixed by zero", "3 1/0 in", "divides by zero"},
	{"half a fraction", "1/ in", "two whole numbers"},
	{"decimal fraction", "1.5/2 in", "two whole numbers"},
	{"fraction over one character", "1/\u00BD in", "two whole numbers"},
	{"decimal and fraction", "1.5 1/2 in", "one or the other"},
	{"decimal and one character", "1.5\u00BD in", "one or the other"},
	{"fraction then number", "\u00BD3 in", "stands where the unit should"},
	{"double fraction", "1/2/3 in", "stands where the unit should"},
	{"subtraction", "34 - 1/2 in", "stands where the unit should"},
	{"two points", "1.2.3 mm", "is not a number"},
	{"point at the end", "5. mm", "is not a number"},
	{"point only", ". mm", "is not a number"},
	{"comma", "3,5 m", "write 3.5 mm, not 3,5"},
	{"thousands comma", "1,000 mm", "1000 mm, not 1,000"},
	{"exponent", "1e3 mm", "exponents are not read"},
	{"exponent with sign", "1E-3 mm", "exponents are not read"},
	{"hexadecimal", "0x10 mm", `unknown unit "x"`},
	{"underscore", "1_000 mm", "stands where the unit should"},
	{"not a number", "NaN", "stands where a number should"},
	{"infinite", "Inf mm", "stands where a number should"},
	{"minus infinite", "-Inf mm", "stands where a number should"},
	{"other digits", "\u0663 mm", "stands where a number should"},
	{"two signs", "--5 mm", "only once, at the very start"},
	{"plus minus", "+-5 mm", "only once, at the very start"},
	{"negative inches", `5'--3"`, "only once, at the very start"},
	{"negative inches in brackets", `5'-(-3)"`, "stands where a number should"},
	{"negative inches, true minus", "5'\u22123\"", "only once, at the very start"},
	{"plus inches", `5' +3"`, "only once, at the very start"},
	{"leaning hyphen", `5' -3"`, "may be a minus"},
	{"feet not whole", `5.5' 3"`, "whole number when inches follow"},
	{"feet twice", "5 ft 3 ft", "only inches may follow feet"},
	{"feet and mm", "5 ft 3 mm", "only inches may follow feet"},
	{"inches and feet", `3" 5'`, "one unit, or feet and inches"},
	{"inches twice", `3" 5"`, "one unit, or feet and inches"},
	{"metres and centimetres", "1 m 5 cm", "one unit, or feet and inches"},
	{"three apostrophes", "5'''", "comes after the unit"},
	{"too long a boat", "1001 m", "1001000 mm is not a length of a boat part"},
	{"just too long", "1000000.01 mm", "1000000.01 mm is not a length of a boat part"},
	{"far too long", "-99999999 ft", "not a length of a boat part"},
	{"too small", "1/" + strings.Repeat("9", 50) + " mm", "too small"},
	{"too many bytes", strings.Repeat("1", 100) + " mm", "103 bytes long; at most 64"},
	{"broken text", "5\xff mm", "stands where the unit should"},
}

func TestParseLengthRefuses(t *testing.T) {
	for _, row := range lengthRefusals {
		t.Run(row.name, func(t *testing.T) {
			got, err := ParseLength(row.text)
			if err == nil {
				t.Fatalf("ParseLength(%q) = %v, want an error", row.text, got)
			}
			checkError(t, err, row.want)
			if got != 0 {
				t.Errorf("ParseLength(%q) gives %v beside its error, want 0", row.text, got)
			}
		})
	}
}

// checkError asks for one short line that holds want.
func checkError(t *testing.T, err error, want string) {
	t.Helper()
	s := err.Error()
	if !strings.Contains(s, want) {
		t.Errorf("error %q does not say %q", s, want)
	}
	if strings.Contains(s, "\n") || len(s) > 250 {
		t.Errorf("error %q is not one short line", s)
	}
}

func TestLengthText(t *testing.T) {
	for _, row := range []struct {
		name string
		in   Length
		want string
	}{
		{"whole", 3500, "3500 mm"},
		{"shortest", 4264.025, "4264.025 mm"},
		{"all digits", Length(1.0 / 3), "0.3333333333333333 mm"},
		{"below zero", -457.2, "-457.2 mm"},
		{"zero", 0, "0 mm"},
		{"minus zero", Length(math.Copysign(0, -1)), "0 mm"},
		{"no exponent", 1e-7, "0.0000001 mm"},
		{"limit", MaxLength, "1000000 mm"},
	} {
		t.Run(row.name, func(t *testing.T) {
			b, err := row.in.MarshalText()
			if err != nil || string(b) != row.want || row.in.String() != row.want {
				t.Fatalf("text of %g is %q, %v and %q, want %q", float64(row.in), b, err, row.in, row.want)
			}
			back := Length(-1)
			if err := back.UnmarshalText(b); err != nil || back != row.in {
				t.Errorf("%q reads as %v, %v, want %g", b, back, err, float64(row.in))
			}
		})
	}
}

func TestLengthTextRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, x := range []float64{nan, inf, -inf, 1e6 + 1, -2e6, 1e-41, 5e-324} {
		if b, err := Length(x).MarshalText(); err == nil {
			t.Errorf("MarshalText of %g = %q, want an error", x, b)
		}
	}
	if s := Length(nan).String() + Length(inf).String(); s != "??" {
		t.Errorf("NaN and Inf show as %q, want ??", s)
	}
	l := Length(7)
	if err := l.UnmarshalText([]byte("7")); err == nil || l != 7 {
		t.Errorf("after a refused text: %v, %v, want an error and 7 mm kept", l, err)
	}
}

// The least length that is written must still fit in what is read.
func TestLengthTextFits(t *testing.T) {
	for _, x := range []Length{-1.2345678901234567e-40, -123456.78901234567, 1e-40} {
		b, err := x.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if got, err := ParseLength(string(b)); err != nil || got != x {
			t.Errorf("%q (%d bytes) reads as %g, %v, want %g", b, len(b), float64(got), err, float64(x))
		}
	}
}

func FuzzParseLength(f *testing.F) {
	for _, row := range lengthRows {
		f.Add(row.text)
	}
	for _, row := range lengthRefusals {
		f.Add(row.text)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := ParseLength(s)
		if err != nil {
			if strings.Contains(err.Error(), "\n") {
				t.Errorf("error of more than one line: %q", err)
			}
			return
		}
		if !(math.Abs(float64(l)) <= float64(MaxLength)) {
			t.Fatalf("ParseLength(%q) = %g", s, float64(l))
		}
		b, err := l.MarshalText()
		if err != nil {
			t.Fatalf("ParseLength(%q) = %g cannot be written: %v", s, float64(l), err)
		}
		if back, err := ParseLength(string(b)); err != nil || back != l {
			t.Fatalf("%q gives %q, which gives %g, %v", s, b, float64(back), err)
		}
		if strings.ContainsAny(strings.TrimSpace(s)[:1], "+-") || strings.HasPrefix(strings.TrimSpace(s), "\u2212") || len(s) == maxBytes {
			return // has its sign already, or no room for one
		}
		if neg, err := ParseLength("-" + s); err != nil || neg != -l {
			t.Fatalf("-%q = %g, %v, want %g", s, float64(neg), err, -float64(l))
		}
	})
}

func ExampleParseLength() {
	for _, s := range []string{`13'-11 7/8"`, "34 1/2 in", "4.267 m", "12"} {
		l, err := ParseLength(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l)
	}
	// Output:
	// 4264.025 mm
	// 876.3 mm
	// 4267 mm
	// length "12": the number has no unit; write mm, cm, m, in, ft or the marks ' and ", as 12 mm
}

// TestPlain holds the short way of reading millimeters to the exact one, and sees that it
// leaves all other texts to that.
func TestPlain(t *testing.T) {
	for _, s := range []string{"0 mm", "0.1 mm", "900 mm", "5.5 mm", "1000000 mm", "0.3000000000001 mm", "94.76625 mm", "4503599.6273705 mm", "123456.7890123 mm"} {
		got, ok := plain(s)
		want, err := parse("length", "", "mm", s, (*reader).length)
		if long := err != nil; ok == long || ok && float64(got) != want {
			t.Errorf("%q: %.17g (%v), exactly %.17g (%v)", s, got, ok, want, err)
		}
	}
	for _, s := range []string{"", " mm", "mm", "9mm", "9  mm", "-9 mm", "+9 mm", "09 mm", "9. mm", ".9 mm", "9.9.9 mm", "1e3 mm", "9 cm", "9 mm ", "1/2 mm", "1_0 mm", "NaN mm", "1000001 mm", "1000000.00000001 mm"} {
		if got, ok := plain(s); ok {
			t.Errorf("%q is read as %g", s, got)
		}
	}
}
