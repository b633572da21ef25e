package main

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/wording"
)

// version is what --version prints; the design file format goes with it.
const version = "0.1.0"

// The exit codes.
const (
	done   = 0
	failed = 1
	misuse = 2
)

// usageError is a wrong call: it exits with misuse.
type usageError struct{ error }

// console is where a verb's words go.
type console struct{ out, err io.Writer }

// run does what the arguments ask and returns the exit code.
func run(args []string, out, errs io.Writer) int { return program(verbs()).run(args, out, errs) }

// program is a set of verbs; a test may bring its own.
type program []verb

// run never panics: a fault of the program's own is reported in a line like any
// other.
func (p program) run(args []string, out, errs io.Writer) (code int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintf(errs, "ribwright: %s\n", wording.Flat(fmt.Sprintf("a fault in the program itself (%v); please report it with your design file", r)))
			code = failed
		}
	}()
	told := &answer{w: out}
	err := p.dispatch(args, console{told, errs})
	if err == nil || errors.Is(err, pflag.ErrHelp) {
		err = told.err
	}
	if err == nil {
		return done
	}
	fmt.Fprintf(errs, "ribwright: %s\n", wording.Flat(err.Error()))
	var wrong usageError
	if errors.As(err, &wrong) {
		return misuse
	}
	return failed
}

// answer is where the words asked for go. It keeps the first failure, for the
// flag library and others that write help do not look.
type answer struct {
	w   io.Writer
	err error
}

func (a *answer) Write(p []byte) (int, error) {
	n, err := a.w.Write(p)
	if err != nil && a.err == nil {
		a.err = fmt.Errorf("cannot write to standard output: %w", keep.Cause(err))
	}
	return n, a.err
}

func (p program) dispatch(args []string, c console) error {
	if len(args) == 0 {
		return usageError{fmt.Errorf("no verb; there are: %s (try 'ribwright help')", p.names())}
	}
	switch args[0] {
	case "--version", "version":
		_, err := fmt.Fprintln(c.out, "ribwright", version+revision())
		return err
	case "--help", "-h", "help":
		return p.help(args[1:], c.out)
	}
	if v := p.find(args[0]); v != nil {
		return v.do(args[1:], c)
	}
	if near := wording.Nearest(args[0], p.list()); near != "" {
		return usageError{fmt.Errorf("no verb %q; did you mean %s? (try 'ribwright help')", args[0], near)}
	}
	return usageError{fmt.Errorf("no verb %q; there are: %s (try 'ribwright help')", args[0], p.names())}
}

// find returns the verb of that name, nil when there is none.
func (p program) find(name string) *verb {
	if i := slices.Index(p.list(), name); i >= 0 {
		return &p[i]
	}
	return nil
}

// list names the verbs, and names does so in a message.
func (p program) list() []string {
	var names []string
	for _, v := range p {
		names = append(names, v.name)
	}
	return names
}

func (p program) names() string { return strings.Join(p.list(), ", ") }

// revision names the commit a build was made from, when it is known.
func revision() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return ""
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 8 {
			return " (" + s.Value[:8] + ")"
		}
	}
	return ""
}
