package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/cmd/internal/job"
	"ribwright/geometry/wording"
)

// flagsOf makes a flag of every field.
func flagsOf(name string, fields []job.Field) *pflag.FlagSet {
	f := pflag.NewFlagSet(name, pflag.ContinueOnError)
	f.SortFlags = false
	for _, field := range fields {
		g := f.VarPF(flagValue{field}, field.Name, "", field.Says)
		if field.Takes == "" {
			g.NoOptDefVal = "true"
		}
	}
	return f
}

// flagValue is a field as the flag library wants it.
type flagValue struct{ job.Field }

func (v flagValue) Type() string { return v.Takes }

// parse reads a verb's flags and returns the other arguments. Help goes to out.
func (v verb) parse(f *pflag.FlagSet, args []string, out io.Writer) ([]string, error) {
	f.SetOutput(io.Discard)
	f.Usage = func() { io.WriteString(out, v.help(f)) }
	if err := f.Parse(args); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return nil, err
		}
		return nil, usageError{fmt.Errorf("%s: %w (try 'ribwright help %s')", v.name, plain(f, err), v.name)}
	}
	if f.NArg() > v.most {
		return nil, usageError{fmt.Errorf("%s: too many arguments: %s; usage: %s", v.name, strings.Join(f.Args()[v.most:], " "), v.usage())}
	}
	return f.Args(), nil
}

// plain puts the flag in front of what is wrong with its value; the library
// says it twice over, or does not say what is accepted.
func plain(f *pflag.FlagSet, err error) error {
	var bad *pflag.InvalidValueError
	if errors.As(err, &bad) {
		return fmt.Errorf("--%s: %w", bad.GetFlag().Name, bad.Unwrap())
	}
	var bare *pflag.ValueRequiredError
	if errors.As(err, &bare) {
		return fmt.Errorf("--%s: no value is given; accepted: %s", bare.GetFlag().Name, bare.GetFlag().Value.Type())
	}
	var none *pflag.NotExistError
	if errors.As(err, &none) {
		var names []string
		f.VisitAll(func(g *pflag.Flag) { names = append(names, g.Name) })
		if near := wording.Nearest(none.GetSpecifiedName(), names); near != "" {
			return fmt.Errorf("no flag --%s; did you mean --%s?", none.GetSpecifiedName(), near)
		}
	}
	return err
}

// help explains the verb and its flags, group by group: what is its own comes first.
func (v verb) help(f *pflag.FlagSet) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\nusage: %s\n", v.name, v.line, v.usage())
	groups := []string{""}
	f.VisitAll(func(g *pflag.Flag) {
		if name := groupOf(g); !slices.Contains(groups, name) {
			groups = append(groups, name)
		}
	})
	for _, group := range groups {
		fmt.Fprintf(&b, "\n%s\n", wording.Capital(group+strings.Repeat("flags", 1-min(1, len(group)))))
		f.VisitAll(func(g *pflag.Flag) {
			if groupOf(g) == group {
				b.WriteString(flagHelp(g))
			}
		})
	}
	fmt.Fprintf(&b, "\nfor example: ribwright %s %s\n", v.name, v.example)
	return b.String()
}

// groupOf is the heading that a flag stands under in help, "" for the program's own.
func groupOf(g *pflag.Flag) string {
	v, _ := g.Value.(flagValue)
	return v.Group
}

// helpWide is the width of help in letters, and helpIn how far its words stand in.
const (
	helpWide = 80
	helpIn   = 8
)

// flagHelp is a flag with what it takes, and below it what it is for.
func flagHelp(g *pflag.Flag) string {
	takes, says := pflag.UnquoteUsage(g)
	if g.NoOptDefVal != "" {
		takes = "" // given or not
	}
	head := "  --" + g.Name
	if g.Shorthand != "" {
		head = "  -" + g.Shorthand + ", --" + g.Name
	}
	if takes != "" {
		head += " " + takes
	}
	switch d := g.DefValue; {
	case takes == "" && d == "true":
		says += fmt.Sprintf(" (done when left out; --%s=false for none)", g.Name)
	case d != "" && d != "false":
		says += fmt.Sprintf(" (%s when left out)", d)
	}
	out, line := head+"\n", strings.Repeat(" ", helpIn-1)
	for _, word := range strings.Fields(says) {
		if len(line)+1+len(word) > helpWide {
			out, line = out+line+"\n", strings.Repeat(" ", helpIn-1)
		}
		line += " " + word
	}
	return out + line + "\n"
}
