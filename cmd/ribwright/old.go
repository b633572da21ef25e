package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/measure"
)

// Verbs that do not yet ask the engine: this file goes when the last of them does.

type output struct {
	name  string
	write func(io.Writer) error
}

func saveIn(dir string, outs []output, through func(io.Writer) io.Writer) error {
	var files []file
	for _, o := range outs {
		files = append(files, file{filepath.Join(dir, o.name), "", o.write})
	}
	return save(files, through)
}

type unitsFlag struct{ measure.System }

func (u *unitsFlag) Type() string { return "metric|imperial" }
func (u *unitsFlag) Set(s string) error {
	var err error
	u.System, err = measure.ParseSystem(s)
	return err
}

func parseOld(v verb, f *pflag.FlagSet, args []string, most int, out io.Writer) ([]string, error) {
	f.SetOutput(io.Discard)
	f.Usage = func() { io.WriteString(out, v.help(f)) }
	if err := f.Parse(args); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return nil, err
		}
		return nil, usageError{fmt.Errorf("%s: %w (try 'ribwright help %s')", v.name, plain(f, err), v.name)}
	}
	if f.NArg() > most {
		return nil, usageError{fmt.Errorf("%s: too many arguments: %s; usage: %s", v.name, strings.Join(f.Args()[most:], " "), v.usage())}
	}
	return f.Args(), nil
}

func outGiven(v verb, out string) error {
	if out == "" {
		return usageError{fmt.Errorf("%s: --out: no folder is given; accepted: a folder, as out or ../river", v.name)}
	}
	return nil
}
