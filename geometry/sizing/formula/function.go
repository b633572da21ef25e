package formula

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// function makes a value of others: an operator, or what is called by its name.
type function struct {
	name  string // or the sign of an operator
	rank  int    // how tightly an operator binds, rankCall for all else
	sides int    // how many values an operator has, the last after it
	twice string // what is said of two operators of the rank in a row, "" when they may stand so
	takes string // what stands in the brackets after a name
	kind  func(args []*node) (Kind, error)
	value func(args []Value) (Value, error) // nil where not all values are worked out (see Run.eval)
}

// How tightly operators bind, the loosest first.
const (
	rankCall = iota // called by name, or a list
	rankIf
	rankOr
	rankAnd
	rankNot
	rankCompare
	rankSum
	rankProduct
	rankSign
	rankPower
	rankAtom // values, names and what stands in brackets
)

const twoComparisons = "two comparisons stand in a row; write a < b and b < c"

var operators = []function{
	{name: "or", rank: rankOr, sides: 2, kind: truths},
	{name: "and", rank: rankAnd, sides: 2, kind: truths},
	{"not", rankNot, 1, "not stands twice; leave both out", "", truths, func(a []Value) (Value, error) { return yes(!a[0].True()), nil }},
	{"<", rankCompare, 2, twoComparisons, "", ordered, compared(func(a, b Value) bool { return a.Num < b.Num })},
	{"<=", rankCompare, 2, twoComparisons, "", ordered, compared(func(a, b Value) bool { return a.Num <= b.Num })},
	{">", rankCompare, 2, twoComparisons, "", ordered, compared(func(a, b Value) bool { return a.Num > b.Num })},
	{">=", rankCompare, 2, twoComparisons, "", ordered, compared(func(a, b Value) bool { return a.Num >= b.Num })},
	{"==", rankCompare, 2, twoComparisons, "", equal, compared(func(a, b Value) bool { return a.Num == b.Num && a.Text == b.Text })},
	{"!=", rankCompare, 2, twoComparisons, "", equal, compared(func(a, b Value) bool { return a.Num != b.Num || a.Text != b.Text })},
	{"+", rankSum, 2, "", "", together("%[2]s cannot be added to %[1]s"), folded(func(a, b float64) float64 { return a + b })},
	{"-", rankSum, 2, "", "", together("%[2]s cannot be taken from %[1]s"), folded(func(a, b float64) float64 { return a - b })},
	{"*", rankProduct, 2, "", "", multiplied(1), folded(func(a, b float64) float64 { return a * b })},
	{"/", rankProduct, 2, "", "", multiplied(-1), divided},
	{"-", rankSign, 1, "two minus signs stand in a row", "", alike, plainly(func(v float64) float64 { return -v })},
	{"^", rankPower, 2, "two powers stand in a row; use brackets", "", ofNumbers(power), folded(math.Pow)},
}

var (
	condition = function{name: "if", rank: rankIf, kind: branches}
	list      = function{name: "[", kind: listed, value: func(a []Value) (Value, error) { return Value{List: numbersOf(a)}, nil }}
)

var functions = []function{
	named("min", "a, b, ...", alike, folded(math.Min)),
	named("max", "a, b, ...", alike, folded(math.Max)),
	named("clamp", "value, lowest, highest", alike, clamp),
	named("round", "value, step", alike, round),
	named("ramp", "x, x0, y0, x1, y1", rampKind, ramp),
	named("abs", "value", alike, plainly(math.Abs)),
	named("floor", "number", from(Plain, Plain), plainly(math.Floor)),
	named("ceil", "number", from(Plain, Plain), plainly(math.Ceil)),
	named("sqrt", "value", rooted(2), within(0, math.MaxFloat64, math.Sqrt)),
	named("cbrt", "value", rooted(3), plainly(math.Cbrt)),
	named("exp", "number", from(Plain, Plain), within(-700, 700, math.Exp)),
	named("log", "number", from(Plain, Plain), within(math.SmallestNonzeroFloat64, math.MaxFloat64, math.Log)),
	named("sin", "angle", from(Angle, Plain), plainly(math.Sin)),
	named("cos", "angle", from(Angle, Plain), plainly(math.Cos)),
	named("tan", "angle", from(Angle, Plain), within(-1.57, 1.57, math.Tan)),
	named("asin", "number", from(Plain, Angle), within(-1, 1, math.Asin)),
	named("acos", "number", from(Plain, Angle), within(-1, 1, math.Acos)),
	named("atan", "number", from(Plain, Angle), plainly(math.Atan)),
	named("scarfs", "length needed, stock length, overlap", scarfKind, scarfs),
}

func named(name, takes string, kind func([]*node) (Kind, error), value func([]Value) (Value, error)) function {
	return function{name: name, takes: takes, kind: kind, value: value}
}

func findFunction(name string) *function {
	for i := range functions {
		if functions[i].name == name {
			return &functions[i]
		}
	}
	return nil
}

func functionNames() string {
	var all []string
	for _, f := range functions {
		all = append(all, f.name)
	}
	return strings.Join(all, ", ")
}

// result is the kind of what the function makes of values.
func (f *function) result(args []*node) (Kind, error) {
	if f.takes == "" {
		return f.kind(args)
	}
	count, more := strings.Count(f.takes, ",")+1, strings.HasSuffix(f.takes, "...")
	if more && len(args) < count-1 || !more && len(args) != count {
		return Kind{}, fmt.Errorf("%s has %d values; it is written %s(%s)", f.name, len(args), f.name, f.takes)
	}
	k, err := f.kind(args)
	if err != nil {
		return k, fmt.Errorf("%s: %w", f.name, err)
	}
	return k, nil
}

func numbersOf(args []Value) []float64 {
	out := make([]float64, len(args))
	for i, a := range args {
		out[i] = a.Num
	}
	return out
}

func plainly(f func(float64) float64) func([]Value) (Value, error) {
	return func(a []Value) (Value, error) { return Num(f(a[0].Num)), nil }
}

// folded puts f between the values, from the first on.
func folded(f func(a, b float64) float64) func([]Value) (Value, error) {
	return func(args []Value) (Value, error) {
		v := args[0].Num
		for _, a := range args[1:] {
			v = f(v, a.Num)
		}
		return Num(v), nil
	}
}

func compared(f func(a, b Value) bool) func([]Value) (Value, error) {
	return func(a []Value) (Value, error) { return yes(f(a[0], a[1])), nil }
}

func within(lo, hi float64, f func(float64) float64) func([]Value) (Value, error) {
	return func(a []Value) (Value, error) {
		if !(a[0].Num >= lo && a[0].Num <= hi) {
			return Value{}, fmt.Errorf("takes a value from %g to %g", lo, hi)
		}
		return Num(f(a[0].Num)), nil
	}
}

func divided(a []Value) (Value, error) {
	if a[1].Num == 0 {
		return Value{}, errors.New("divides by zero")
	}
	return Num(a[0].Num / a[1].Num), nil
}

func clamp(a []Value) (Value, error) {
	if a[1].Num > a[2].Num {
		return Value{}, errors.New("the lower bound is above the upper bound")
	}
	return Num(math.Max(a[1].Num, math.Min(a[2].Num, a[0].Num))), nil
}

// round rounds to a whole number of steps.
func round(a []Value) (Value, error) {
	step := a[1].Num
	if !(step > 0) {
		return Value{}, errors.New("the step is not more than 0")
	}
	return Num(math.Round(a[0].Num/step) * step), nil
}

// ramp is y0 up to x0, y1 from x1 on and a straight line between.
func ramp(a []Value) (Value, error) {
	x, x0, y0, x1, y1 := a[0].Num, a[1].Num, a[2].Num, a[3].Num, a[4].Num
	if !(x0 < x1) {
		return Value{}, errors.New("it ends before it begins")
	}
	share := math.Max(0, math.Min(1, (x-x0)/(x1-x0)))
	return Num(y0 + (y1-y0)*share), nil
}

// scarfs returns where the joints of a gunwale should lie, from its middle,
// when no piece may be longer than the stock: none when one piece is enough,
// then one or two, never in the middle third, where a gunwale is bent most. Half the scarf's own length goes to each piece.
func scarfs(a []Value) (Value, error) {
	need, stock, overlap := a[0].Num, a[1].Num, a[2].Num
	switch {
	case need <= stock:
		return Value{}, nil
	case 0.7*need+overlap <= stock:
		return Value{List: []float64{-0.2 * need}}, nil
	case 0.4*need+overlap <= stock:
		return Value{List: []float64{-0.2 * need, 0.2 * need}}, nil
	}
	return Value{}, fmt.Errorf("stock of %.0f mm is too short for a stick of %.0f mm; accepted: %.0f mm or more", stock, need, 0.4*need+overlap)
}
