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

	pair   func(a, b float64) float64            // of two numbers or truths; of more it is put between them, from the first on
	number func(args []float64) (float64, error) // of numbers; beside pair it says why there is no answer
	value  func(args []Value) (Value, error)     // of anything; nil with the others, and where not all are worked out (see Run.number)
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

var operators = []function{
	{name: "or", rank: rankOr, sides: 2, kind: truths},
	{name: "and", rank: rankAnd, sides: 2, kind: truths},
	{name: "not", rank: rankNot, sides: 1, twice: "not stands twice; leave both out", kind: truths, number: plainly(func(a float64) float64 { return yes(a == 0) })},
	comparing("<", ordered, func(a, b float64) float64 { return yes(a < b) }, nil),
	comparing("<=", ordered, func(a, b float64) float64 { return yes(a <= b) }, nil),
	comparing(">", ordered, func(a, b float64) float64 { return yes(a > b) }, nil),
	comparing(">=", ordered, func(a, b float64) float64 { return yes(a >= b) }, nil),
	comparing("==", equal, nil, func(a []Value) (Value, error) { return Num(yes(a[0].Num == a[1].Num && a[0].Text == a[1].Text)), nil }),
	comparing("!=", equal, nil, func(a []Value) (Value, error) { return Num(yes(a[0].Num != a[1].Num || a[0].Text != a[1].Text)), nil }),
	{name: "+", rank: rankSum, sides: 2, kind: together("%[2]s cannot be added to %[1]s"), pair: func(a, b float64) float64 { return a + b }},
	{name: "-", rank: rankSum, sides: 2, kind: together("%[2]s cannot be taken from %[1]s"), pair: func(a, b float64) float64 { return a - b }},
	{name: "*", rank: rankProduct, sides: 2, kind: multiplied(1), pair: func(a, b float64) float64 { return a * b }},
	{name: "/", rank: rankProduct, sides: 2, kind: multiplied(-1), pair: func(a, b float64) float64 { return a / b }, number: divided},
	{name: "-", rank: rankSign, sides: 1, twice: "two minus signs stand in a row", kind: alike, number: plainly(func(v float64) float64 { return -v })},
	{name: "^", rank: rankPower, sides: 2, twice: "two powers stand in a row; use brackets", kind: ofNumbers(power), pair: math.Pow},
}

var (
	condition = function{name: "if", rank: rankIf, kind: branches}
	list      = function{name: "[", kind: listed, value: func(a []Value) (Value, error) { return Value{List: numbersOf(a)}, nil }}
)

var functions = []function{
	{name: "min", takes: "a, b, ...", kind: alike, pair: math.Min},
	{name: "max", takes: "a, b, ...", kind: alike, pair: math.Max},
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
	{name: "scarfs", takes: "length needed, stock length, overlap", kind: scarfKind, value: scarfs},
}

func comparing(name string, kind func([]*node) (Kind, error), pair func(a, b float64) float64, value func([]Value) (Value, error)) function {
	return function{name: name, rank: rankCompare, sides: 2, twice: "two comparisons stand in a row; write a < b and b < c", kind: kind, pair: pair, value: value}
}

func named(name, takes string, kind func([]*node) (Kind, error), number func([]float64) (float64, error)) function {
	return function{name: name, takes: takes, kind: kind, number: number}
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

func valuesOf(args []float64) []Value {
	out := make([]Value, len(args))
	for i, a := range args {
		out[i] = Num(a)
	}
	return out
}

func plainly(f func(float64) float64) func([]float64) (float64, error) {
	return func(a []float64) (float64, error) { return f(a[0]), nil }
}

func within(lo, hi float64, f func(float64) float64) func([]float64) (float64, error) {
	return func(a []float64) (float64, error) {
		if !(a[0] >= lo && a[0] <= hi) {
			return 0, fmt.Errorf("takes a value from %g to %g", lo, hi)
		}
		return f(a[0]), nil
	}
}

func divided(a []float64) (float64, error) {
	if a[1] == 0 {
		return 0, errors.New("divides by zero")
	}
	return a[0] / a[1], nil
}

func clamp(a []float64) (float64, error) {
	if a[1] > a[2] {
		return 0, errors.New("the lower bound is above the upper bound")
	}
	return math.Max(a[1], math.Min(a[2], a[0])), nil
}

// round rounds to a whole number of steps.
func round(a []float64) (float64, error) {
	value, step := a[0], a[1]
	if !(step > 0) {
		return 0, errors.New("the step is not more than 0")
	}
	return math.Round(value/step) * step, nil
}

// ramp is y0 up to x0, y1 from x1 on and a straight line between.
func ramp(a []float64) (float64, error) {
	x, x0, y0, x1, y1 := a[0], a[1], a[2], a[3], a[4]
	if !(x0 < x1) {
		return 0, errors.New("it ends before it begins")
	}
	share := math.Max(0, math.Min(1, (x-x0)/(x1-x0)))
	return y0 + (y1-y0)*share, nil
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
