package main

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strings"

	"github.com/spf13/pflag"
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

// verb is one thing the program can do.
type verb struct {
	name    string
	line    string // what it does, in a line
	usage   string
	example string
	run     func(args []string, c console) error
}

// verbs lists everything the program can do, in the order of a builder's work.
func verbs() []verb { return []verb{loftVerb()} }

// run does what the arguments ask and returns the exit code. It never panics:
// a fault of the program's own is reported in a line like any other.
func run(args []string, out, errs io.Writer) (code int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintf(errs, "ribwright: a fault in the program itself (%v); please report it with your design file\n", r)
			code = failed
		}
	}()
	err := dispatch(args, console{out, errs})
	var wrong usageError
	switch {
	case err == nil, errors.Is(err, pflag.ErrHelp):
		return done
	case errors.As(err, &wrong):
		fmt.Fprintf(errs, "ribwright: %s\n", flat(err))
		return misuse
	}
	fmt.Fprintf(errs, "ribwright: %s\n", flat(err))
	return failed
}

// flat keeps every message on one line.
func flat(err error) string { return strings.Join(strings.Fields(err.Error()), " ") }

func dispatch(args []string, c console) error {
	if len(args) == 0 {
		return overview(c.out)
	}
	switch args[0] {
	case "--version", "version":
		_, err := fmt.Fprintln(c.out, "ribwright", version+revision())
		return err
	case "--help", "-h", "help":
		return help(args[1:], c.out)
	}
	for _, v := range verbs() {
		if v.name == args[0] {
			return v.run(args[1:], c)
		}
	}
	return usageError{fmt.Errorf("no verb %q; there are: %s (try 'ribwright help')", args[0], verbNames())}
}

func verbNames() string {
	var names []string
	for _, v := range verbs() {
		names = append(names, v.name)
	}
	return strings.Join(names, ", ")
}

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
