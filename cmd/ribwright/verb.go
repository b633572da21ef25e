package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/pflag"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/ribwright/folder"
	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
	"ribwright/render/json"
	"ribwright/render/text"
)

// verb is one thing the program can do.
type verb struct {
	name    string
	line    string // what it does, in a line
	takes   string // the names that follow it
	most    int    // how many of them
	example string // what follows the verb in one
	numbers bool   // it can answer in JSON
	placed  bool   // its first file is put where -o says
	judges  bool   // it finds out whether a boat should be built as it is
	request func() job.Request
	run     func(args []string, c console) error // what it does instead of answering a request; nil for most
}

// usage is how the verb is called.
func (v verb) usage() string {
	return strings.Join(strings.Fields("ribwright "+v.name+" "+v.takes+" [flags]"), " ")
}

// asked are the flags that belong to the program and not to the request.
type asked struct {
	out  string // folder for the files
	json bool

	strict bool   // a warning fails and nothing is written
	file   string // the place of the first file; "" for its own name in out
	part   bool   // some of the sheets only

	names []string // of designs and tables
}

// do answers the verb's request: it reads the flags, has the work done, saves the
// files and tells what came of it.
func (v verb) do(args []string, c console) error {
	if v.run != nil {
		return v.run(args, c)
	}
	r := v.request()
	a := asked{}
	replace := false
	w, err := v.ask(args, c, r, &a, func(f *pflag.FlagSet) { replacing(f, &replace) })
	if err != nil {
		return err
	}
	result, err := r.Do(w)
	if err != nil {
		return v.explained(err)
	}
	if a.strict && len(result.Warnings) > 0 {
		return refused(v.name, result.Warnings)
	}
	if p, ok := r.(interface{ Part() bool }); ok {
		a.part = p.Part()
	}
	outs := a.files(result.Outputs)
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(stop)
	boat := ""
	if s, ok := r.(interface{ Source() string }); ok {
		boat = s.Source()
	}
	set, err := folder.Added(outs, boat, replace)
	if err != nil {
		return err
	}
	if err := (keep.Keeper{Disk: keep.Here{}, Stop: stop}).Save(set); err != nil {
		return err
	}
	if err := a.tell(c.out, result, outs); err != nil || a.json || result.Text != "" {
		return err
	}
	return v.end(c.out, args, a.names, outs)
}

// replacing asks whether files in the way may go, whoever made them.
func replacing(f *pflag.FlagSet, replace *bool) {
	f.BoolVar(replace, "replace", false, "write over files of the same names that this program did not make, or that were changed since")
}

// refused says why the boat should not be built as it is; without --strict the page says so.
func refused(verb string, all finding.List) error {
	return fmt.Errorf("%s: nothing is written, as --strict asks: %s", verb, wording.Joined(all, "; ", finding.Finding.String))
}

// ask reads the arguments into a request, and what the job may know besides. own adds
// flags of the verb's own.
func (v verb) ask(args []string, c console, r job.Request, a *asked, own func(*pflag.FlagSet)) (job.World, error) {
	f := flagsOf(v.name, r.Fields())
	f.StringVar(&a.out, "out", "out", "`folder` for the files; made when missing")
	if v.numbers {
		f.BoolVar(&a.json, "json", false, "every figure as JSON instead of the page")
	}
	if v.placed {
		f.StringVarP(&a.file, "output", "o", "", "`file` for the design; NAME.toml in the folder of --out when left out")
	}
	if v.judges {
		f.BoolVar(&a.strict, "strict", false, "exit with 1, and write nothing, where the boat does not stand or its wood does not bend")
	}
	own(f)
	names, err := v.parse(f, args, c.out)
	if err != nil {
		return job.World{}, err
	}
	if err := a.check(); err != nil {
		return job.World{}, usageError{fmt.Errorf("%s: %w", v.name, err)}
	}
	if a.names = names; len(names) > 0 {
		r.Name(names)
	}
	made, err := dateOfFiles(os.Getenv("SOURCE_DATE_EPOCH"))
	return job.World{Files: keep.ReadFile, Made: made}, err
}

// dateOfFiles returns the date that stands in every file: a fixed one, so that
// the same design gives the same bytes, or what a build system asks for.
//
// Source: the SOURCE_DATE_EPOCH specification, version 1.1, reproducible-builds.org.
func dateOfFiles(epoch string) (time.Time, error) {
	if epoch == "" {
		return job.UsualDate(), nil
	}
	seconds, err := strconv.ParseInt(epoch, 10, 64)
	// The date must have a year of four figures in the files.
	if err != nil || seconds < 0 || seconds > 253402300799 {
		return time.Time{}, usageError{fmt.Errorf("SOURCE_DATE_EPOCH is %q; accepted: whole seconds since 1970, as 1767225600", epoch)}
	}
	return time.Unix(seconds, 0).UTC(), nil
}

// explained puts the verb and its flags in front of a wrong request.
func (v verb) explained(err error) error {
	var m *job.Misuse
	if !errors.As(err, &m) {
		return err
	}
	if len(m.Fields) == 0 {
		return usageError{fmt.Errorf("%s: %w", v.name, m.Err)}
	}
	return usageError{fmt.Errorf("%s: --%s: %w", v.name, strings.Join(m.Fields, " and --"), m.Err)}
}

// check refuses places where nothing can be put.
func (a *asked) check() error {
	switch {
	case a.out == "":
		return errors.New("--out: no folder is given; accepted: a folder, as out or ../river")
	case a.file != "" && !strings.EqualFold(filepath.Ext(a.file), ".toml"):
		return fmt.Errorf("--output: %q is no design file; accepted: a name that ends in .toml", a.file)
	}
	return nil
}

// tell says what was found and which files were made.
func (a *asked) tell(w io.Writer, r *job.Result, outs []keep.File) error {
	if r.Text != "" {
		_, err := io.WriteString(w, r.Text)
		return err
	}
	if a.json {
		return json.Encode(w, r.Numbers)
	}
	if err := text.Encode(w, r.Report); err != nil {
		return err
	}
	var b strings.Builder
	for i, f := range outs {
		if i == 0 {
			b.WriteString("\n")
		}
		b.WriteString(f.Path + "\n")
		if says := r.Outputs[i].Says; says != "" {
			b.WriteString("  " + says + "\n")
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// files puts every output into the folder, a design where it is said. Sheets and numbers of
// a part lie beside those of the whole where these are there, and do not take their place.
func (a *asked) files(outs []job.Output) []keep.File {
	var out []keep.File
	for i, o := range outs {
		path := filepath.Join(a.out, o.Name)
		if i == 0 && a.file != "" && strings.EqualFold(filepath.Ext(o.Name), filepath.Ext(a.file)) {
			path = a.file
		}
		ext := filepath.Ext(path)
		if _, err := os.Lstat(path); a.part && err == nil && (ext == ".pdf" || ext == ".json") {
			path = strings.TrimSuffix(path, ext) + "-part" + ext
		}
		out = append(out, keep.File{Path: path, Write: o.Write})
	}
	return out
}
