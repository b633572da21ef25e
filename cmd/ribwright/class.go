package main

import (
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"syscall"

	"github.com/spf13/pflag"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/ribwright/folder"
	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/sizing"
	"ribwright/layout/report/reasons"
)

// class makes a class: a folder for each builder, and a summary. Every core works; a
// row that cannot be made is told and passed over.
func (v verb) class(args []string, c console) error {
	r, a, replace := job.NewClass(), asked{}, false
	w, err := v.ask(args, c, r, &a, func(f *pflag.FlagSet) { replacing(f, &replace) })
	if err != nil {
		return err
	}
	w.Program = thisProgram()
	course, err := r.Read(w)
	if err != nil {
		return v.explained(err)
	}
	summary := folder.Folder{Dir: a.out, Shared: true, Replace: replace}
	release, err := holdFolder(summary, r.Table, course.Names())
	if err != nil {
		return err
	}
	defer release()
	defer clearing()()
	p := newProgress(c, course.Len(), !a.json)
	all := work(course, p, func(b job.Built) (sizing.Status, error) {
		return folder.Folder{Dir: filepath.Join(a.out, b.Folder), Replace: replace}.Deliver(b.Key, b.Files)
	})
	result := course.Result(all)
	summary.Told = told(r, w.Program, a.out, all)
	key, book := course.Book(all)
	whole, bookless := summary.Still(key, book)
	if bookless == nil {
		summary.Told.Key, result.Outputs = key, append(result.Outputs, whole...)
	}
	if _, err := summary.Deliver("", func() ([]job.Output, error) { return result.Outputs, nil }); err != nil {
		return err
	}
	if bookless != nil {
		return fmt.Errorf("the boats are made, but not the book of the course: %w", bookless)
	}
	failed := firstFailure(r.Table, filepath.Join(a.out, job.SummaryName), all)
	if failed == nil || a.json { // a run that fails says so in a line; a program wants the rows all the same
		if err := a.tell(c.out, result, a.files(result.Outputs)); err != nil {
			return err
		}
	}
	if failed != nil || a.json {
		return failed
	}
	return v.end(c.out, args, a.names, firstDesign(a.out, all))
}

// firstDesign is the design file of the first builder who has one.
func firstDesign(dir string, all []sizing.Outcome) []keep.File {
	for _, o := range all {
		for _, m := range folder.Listed(filepath.Join(dir, o.Folder)).Made {
			if o.Folder != "" && filepath.Ext(m.Name) == ".toml" {
				return []keep.File{{Path: filepath.Join(dir, o.Folder, m.Name)}}
			}
		}
	}
	return nil
}

// holdFolder makes a folder where there is none, keeps other runs out of it, undoes what a run
// left half done that was ended, and only then finds out whether the files of the whole course
// have room: a summary that took its place just before its list did would be in its own way.
func holdFolder(f folder.Folder, table string, names []string) (release func(), err error) {
	if err := os.MkdirAll(f.Dir, 0o777); err != nil {
		return nil, fmt.Errorf("cannot make the folder %q: %w", f.Dir, keep.Cause(err))
	}
	if release, err = keep.Hold(f.Dir); err != nil {
		return nil, err
	}
	if err = keep.Usual().Heal(f.Dir); err == nil {
		err = summaryHasRoom(f, table, names)
	}
	if err != nil {
		release()
		return nil, err
	}
	return release, nil
}

// told is what the course's own list tells of besides: the program, what was asked, and every
// file in the folders of those rows whose files are as this run wants them.
func told(r *job.Class, program, dir string, all []sizing.Outcome) folder.List {
	out := folder.List{Notes: []string{"program: " + program, "table: " + filepath.Base(r.Table)}}
	asked := "asked:"
	for _, f := range r.Fields() {
		if v := f.Value.String(); v != "" {
			asked += fmt.Sprintf(" --%s=%s", f.Name, v)
		}
	}
	out.Notes = append(out.Notes, asked)
	for _, o := range all {
		if o.Status != sizing.Made && o.Status != sizing.Kept {
			continue
		}
		for _, m := range folder.Listed(filepath.Join(dir, o.Folder)).Made {
			out.Below = append(out.Below, folder.Made{Sum: m.Sum, Name: o.Folder + "/" + m.Name})
		}
	}
	return out
}

// thisProgram names the program that makes files, so that another one does not take them for
// current: by its version, and by a sum of the program itself, for a version changes seldom.
func thisProgram() string {
	out := "ribwright " + version + revision()
	path, err := os.Executable()
	if err != nil {
		return out
	}
	program, err := os.Open(path)
	if err != nil {
		return out
	}
	defer program.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, program); err != nil {
		return out
	}
	return fmt.Sprintf("%s, sum %.8x", out, sum.Sum(nil))
}

// summaryHasRoom finds out early whether what tells of all can take its place, and not that
// of the table itself.
func summaryHasRoom(f folder.Folder, table string, names []string) error {
	place := filepath.Join(f.Dir, job.SummaryName)
	there, err := os.Stat(place)
	if err == nil {
		if from, err := os.Stat(table); err == nil && os.SameFile(there, from) {
			return fmt.Errorf("%s is the table of builders, and the summary would take its place; give the table another name, or take another folder with --out", place)
		}
	}
	return f.HasRoom(names)
}

// work makes every row on all cores, until the run is interrupted.
func work(course *job.Course, p *progress, deliver func(job.Built) (sizing.Status, error)) []sizing.Outcome {
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(stop)
	p.begin()
	all := make([]sizing.Outcome, course.Len())
	for i := range all {
		all[i] = course.Undone(i)
	}
	cores := runtime.GOMAXPROCS(0)
	if len(all) >= cores {
		course.Busy()
	}
	rows := make(chan int)
	var workers sync.WaitGroup
	for range min(cores, len(all)) {
		workers.Go(func() {
			for i := range rows {
				all[i] = course.Make(i, deliver)
				p.done(all[i])
			}
		})
	}
loop:
	for i := range all {
		select {
		case <-stop:
			break loop
		case rows <- i:
		}
	}
	close(rows)
	workers.Wait()
	p.end()
	return all
}

// firstFailure makes a run fail in which a row did, and says of the first why, and where it
// is said of the others.
func firstFailure(table, summary string, all []sizing.Outcome) error {
	failed := slices.DeleteFunc(slices.Clone(all), func(o sizing.Outcome) bool { return o.Status != sizing.Failed && o.Status != sizing.NotDone })
	if len(failed) == 0 {
		return nil
	}
	others := ""
	if len(failed) > 1 {
		others = "; why the others failed stands in " + summary
	}
	o := failed[0]
	return fmt.Errorf("%s: line %d, %q: %s; %s%s", table, o.Line, o.Name, o.Why, reasons.ClassCount(all), others)
}
