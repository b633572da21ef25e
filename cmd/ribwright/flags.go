package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/measure"
)

// unitsFlag is a system of units as a flag.
type unitsFlag struct{ measure.System }

func (u *unitsFlag) Type() string { return "metric|imperial" }
func (u *unitsFlag) Set(s string) error {
	var err error
	u.System, err = measure.ParseSystem(s)
	return err
}

// parse reads a verb's flags and returns the other arguments, at most the given
// number. Help goes to out.
func parse(v verb, f *pflag.FlagSet, args []string, most int, out io.Writer) ([]string, error) {
	f.SetOutput(io.Discard)
	f.Usage = func() {
		fmt.Fprintf(out, "%s: %s\n\nusage: %s\n\n%s\nfor example: %s\n", v.name, v.line, v.usage, f.FlagUsages(), v.example)
	}
	if err := f.Parse(args); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return nil, err
		}
		return nil, usageError{fmt.Errorf("%s: %w (try 'ribwright help %s')", v.name, plain(err), v.name)}
	}
	if f.NArg() > most {
		return nil, usageError{fmt.Errorf("%s: too many arguments: %s; usage: %s", v.name, strings.Join(f.Args()[most:], " "), v.usage)}
	}
	return f.Args(), nil
}

// plain puts the flag in front of what is wrong with its value; the library
// says it twice over, or does not say what is accepted.
func plain(err error) error {
	var bad *pflag.InvalidValueError
	if errors.As(err, &bad) {
		return fmt.Errorf("--%s: %w", bad.GetFlag().Name, bad.Unwrap())
	}
	var bare *pflag.ValueRequiredError
	if errors.As(err, &bare) {
		accepted, _ := pflag.UnquoteUsage(bare.GetFlag())
		return fmt.Errorf("--%s: no value is given; accepted: %s", bare.GetFlag().Name, accepted)
	}
	return err
}
