package formula

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// function is a built-in function.
type function struct {
	name  string
	takes string // shown when it is called wrongly
	least int    // count of arguments
	most  int
	kind  func(args []Kind) (Kind, error)               // of the result
	value func(r *Run, args []float64) (float64, error) // nil for those on lists, which the run knows
}

// numbers requires every argument to be a number.
func numbers(args []Kind) error {
	for i, a := range args {
		if a.Class != Number {
			return fmt.Errorf("value %d is %s; accepted: a number", i+1, a)
		}
	}
	return nil
}

// alike requires numbers that measure the same, and gives it.
func alike(args []Kind) (Kind, error) {
	if err := numbers(args); err != nil {
		return Kind{}, err
	}
	for i, a := range args[1:] {
		if a != args[0] {
			return Kind{}, fmt.Errorf("value %d is %s and value 1 is %s; accepted: all alike", i+2, a, args[0])
		}
	}
	return args[0], nil
}

// from makes a rule for one argument of the dimension d and a result in e.
func from(d, e Dim) func([]Kind) (Kind, error) {
	return func(args []Kind) (Kind, error) {
		if args[0] != Of(d) {
			return Kind{}, fmt.Errorf("the value is %s; accepted: %s", args[0], d)
		}
		return Of(e), nil
	}
}

func rooted(n int8) func([]Kind) (Kind, error) {
	return func(args []Kind) (Kind, error) {
		if err := numbers(args); err != nil {
			return Kind{}, err
		}
		d, ok := args[0].Dim.root(n)
		if !ok {
			return Kind{}, fmt.Errorf("%s has no such root in whole units", args[0])
		}
		return Of(d), nil
	}
}

func plainly(f func(float64) float64) func(*Run, []float64) (float64, error) {
	return func(_ *Run, a []float64) (float64, error) { return f(a[0]), nil }
}

func within(lo, hi float64, f func(float64) float64) func(*Run, []float64) (float64, error) {
	return func(_ *Run, a []float64) (float64, error) {
		if !(a[0] >= lo && a[0] <= hi) {
			return 0, fmt.Errorf("takes a value from %g to %g", lo, hi)
		}
		return f(a[0]), nil
	}
}

func clampValue(_ *Run, a []float64) (float64, error) {
	if a[1] > a[2] {
		return 0, errors.New("the lower bound is above the upper bound")
	}
	return math.Max(a[1], math.Min(a[2], a[0])), nil
}

// roundValue rounds to a whole number of steps, unless the run is asked for
// values without rounding (see Run.Smooth).
func roundValue(r *Run, a []float64) (float64, error) {
	if !(a[1] > 0) {
		return 0, errors.New("the step is not more than 0")
	}
	if r.Smooth {
		return a[0], nil
	}
	return math.Round(a[0]/a[1]) * a[1], nil
}

// rampKind takes x, x0, y0, x1, y1.
func rampKind(args []Kind) (Kind, error) {
	if _, err := alike([]Kind{args[0], args[1], args[3]}); err != nil {
		return Kind{}, fmt.Errorf("of x, x0, x1: %w", err)
	}
	return alike([]Kind{args[2], args[4]})
}

// rampValue is y0 up to x0, y1 from x1 on and a straight line between.
func rampValue(_ *Run, a []float64) (float64, error) {
	if !(a[1] < a[3]) {
		return 0, errors.New("it ends before it begins")
	}
	share := math.Max(0, math.Min(1, (a[0]-a[1])/(a[3]-a[1])))
	return a[2] + (a[4]-a[2])*share, nil
}

func functions() []function {
	plain := from(Plain, Plain)
	return []function{
		{"min", "min(a, b, ...)", 2, maxList, alike, func(_ *Run, a []float64) (float64, error) { return fold(a, math.Min), nil }},
		{"max", "max(a, b, ...)", 2, maxList, alike, func(_ *Run, a []float64) (float64, error) { return fold(a, math.Max), nil }},
		{"clamp", "clamp(value, lowest, highest)", 3, 3, alike, clampValue},
		{"round", "round(value, step)", 2, 2, alike, roundValue},
		{"ramp", "ramp(x, x0, y0, x1, y1)", 5, 5, rampKind, rampValue},
		{"abs", "abs(value)", 1, 1, alike, plainly(math.Abs)},
		{"floor", "floor(number)", 1, 1, plain, plainly(math.Floor)},
		{"ceil", "ceil(number)", 1, 1, plain, plainly(math.Ceil)},
		{"sqrt", "sqrt(value)", 1, 1, rooted(2), within(0, math.MaxFloat64, math.Sqrt)},
		{"cbrt", "cbrt(value)", 1, 1, rooted(3), plainly(math.Cbrt)},
		{"exp", "exp(number)", 1, 1, plain, within(-700, 700, math.Exp)},
		{"log", "log(number)", 1, 1, plain, within(math.SmallestNonzeroFloat64, math.MaxFloat64, math.Log)},
		{"sin", "sin(angle)", 1, 1, from(Angle, Plain), plainly(math.Sin)},
		{"cos", "cos(angle)", 1, 1, from(Angle, Plain), plainly(math.Cos)},
		{"tan", "tan(angle)", 1, 1, from(Angle, Plain), within(-1.57, 1.57, math.Tan)},
		{"asin", "asin(number)", 1, 1, from(Plain, Angle), within(-1, 1, math.Asin)},
		{"acos", "acos(number)", 1, 1, from(Plain, Angle), within(-1, 1, math.Acos)},
		{"atan", "atan(number)", 1, 1, from(Plain, Angle), plainly(math.Atan)},
		{"scarfs", "scarfs(length needed, stock length, overlap)", 3, 3, scarfKind, nil},
	}
}

func fold(a []float64, f func(a, b float64) float64) float64 {
	v := a[0]
	for _, b := range a[1:] {
		v = f(v, b)
	}
	return v
}

func scarfKind(args []Kind) (Kind, error) {
	for i, a := range args {
		if a != Of(Length) {
			return Kind{}, fmt.Errorf("value %d is %s; accepted: a length", i+1, a)
		}
	}
	return Kind{List, Length}, nil
}

// scarfPlaces returns where the joints of a gunwale should lie, from its middle,
// when no piece may be longer than the stock: none when one piece is enough,
// then one or two, never in the middle third, where a gunwale is bent most. Half the scarf's own length goes to each piece.
func scarfPlaces(need, stock, overlap float64) ([]float64, error) {
	if need <= stock {
		return nil, nil
	}
	for _, shares := range [][]float64{{-0.2}, {-0.2, 0.2}} {
		longest, last := 0.0, -0.5
		for _, s := range append(append([]float64(nil), shares...), 0.5) {
			longest, last = math.Max(longest, s-last), s
		}
		if longest*need+overlap > stock {
			continue
		}
		for i := range shares {
			shares[i] *= need
		}
		return shares, nil
	}
	return nil, fmt.Errorf("stock of %.0f mm is too short for a stick of %.0f mm; accepted: %.0f mm or more", stock, need, 0.4*need+overlap)
}

func findFunction(name string) *function {
	for _, f := range functions() {
		if f.name == name {
			return &f
		}
	}
	return nil
}

func functionNames() string {
	var all []string
	for _, f := range functions() {
		all = append(all, f.name)
	}
	return strings.Join(all, ", ")
}
