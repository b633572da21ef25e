package formula

import "fmt"

// ofNumbers makes a rule that requires every value to be a number.
func ofNumbers(rule func([]*node) (Kind, error)) func([]*node) (Kind, error) {
	return func(args []*node) (Kind, error) {
		for i, a := range args {
			if a.kind.Class != Number {
				return Kind{}, fmt.Errorf("value %d is %s; accepted: a number", i+1, a.kind)
			}
		}
		return rule(args)
	}
}

// alike requires numbers that measure the same, and gives it.
func alike(args []*node) (Kind, error) { return ofNumbers(same)(args) }

func same(args []*node) (Kind, error) {
	for i, a := range args {
		if a.kind != args[0].kind {
			return Kind{}, fmt.Errorf("value %d is %s and value 1 is %s; accepted: all alike", i+1, a.kind, args[0].kind)
		}
	}
	return args[0].kind, nil
}

// together requires two numbers that measure the same; unlike is what is said of others.
func together(unlike string) func([]*node) (Kind, error) {
	return ofNumbers(func(a []*node) (Kind, error) {
		if a[0].kind != a[1].kind {
			return Kind{}, fmt.Errorf(unlike, a[0].kind, a[1].kind)
		}
		return a[0].kind, nil
	})
}

const unequal = "%s cannot be compared with %s"

func ordered(a []*node) (Kind, error) {
	_, err := together(unequal)(a)
	return Kind{Class: Truth}, err
}

func equal(a []*node) (Kind, error) {
	if a[0].kind != a[1].kind || a[0].kind.Class == List {
		return Kind{}, fmt.Errorf(unequal, a[0].kind, a[1].kind)
	}
	return Kind{Class: Truth}, nil
}

func truths(args []*node) (Kind, error) {
	for _, a := range args {
		if a.kind.Class != Truth {
			return Kind{}, fmt.Errorf("%s stands where true or false should", a.kind)
		}
	}
	return Kind{Class: Truth}, nil
}

func branches(a []*node) (Kind, error) {
	switch {
	case a[0].kind.Class != Truth:
		return Kind{}, fmt.Errorf("what follows if is %s; accepted: true or false, such as a comparison", a[0].kind)
	case a[1].kind != a[2].kind:
		return Kind{}, fmt.Errorf("then gives %s and else gives %s; accepted: both alike", a[1].kind, a[2].kind)
	}
	return a[1].kind, nil
}

func listed(args []*node) (Kind, error) {
	if len(args) == 0 {
		return Kind{}, fmt.Errorf("a list holds at least one value")
	}
	of, err := alike(args)
	if err != nil {
		return of, fmt.Errorf("a list holds numbers of one kind: %w", err)
	}
	return Kind{List, of.Dim}, nil
}

// multiplied adds the units of the second number to those of the first, times so many.
func multiplied(times int) func([]*node) (Kind, error) {
	return ofNumbers(func(a []*node) (Kind, error) { return a[0].kind.Dim.plus(a[1].kind.Dim, times) })
}

// power raises units to a whole power written out; plain numbers to any.
func power(a []*node) (Kind, error) {
	k, e := a[0].kind, a[1]
	switch {
	case e.kind != Of(Plain):
		return Kind{}, fmt.Errorf("the power is %s; accepted: a plain number", e.kind)
	case k == Of(Plain):
		return k, nil
	case !e.isValue() || e.value.Num != float64(int8(e.value.Num)) || e.value.Num > maxPower:
		return Kind{}, fmt.Errorf("%s takes a whole power up to %d, written out; for a root use sqrt or cbrt", k, maxPower)
	}
	return Dim{}.plus(k.Dim, int(e.value.Num))
}

// from makes a rule for one value of the dimension d and a result in e.
func from(d, e Dim) func([]*node) (Kind, error) {
	return func(a []*node) (Kind, error) {
		if a[0].kind != Of(d) {
			return Kind{}, fmt.Errorf("the value is %s; accepted: %s", a[0].kind, d)
		}
		return Of(e), nil
	}
}

func rooted(n int8) func([]*node) (Kind, error) {
	return ofNumbers(func(a []*node) (Kind, error) {
		d, ok := a[0].kind.Dim.root(n)
		if !ok {
			return Kind{}, fmt.Errorf("%s has no such root in whole units", a[0].kind)
		}
		return Of(d), nil
	})
}

func rampKind(a []*node) (Kind, error) {
	if _, err := alike([]*node{a[0], a[1], a[3]}); err != nil {
		return Kind{}, fmt.Errorf("of x, x0, x1: %w", err)
	}
	return alike([]*node{a[2], a[4]})
}

func scarfKind(args []*node) (Kind, error) {
	for i, a := range args {
		if a.kind != Of(Length) {
			return Kind{}, fmt.Errorf("value %d is %s; accepted: a length", i+1, a.kind)
		}
	}
	return Kind{List, Length}, nil
}
