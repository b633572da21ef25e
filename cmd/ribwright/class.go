package main

import (
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"sync"
	"syscall"

	"github.com/spf13/pflag"

	"ribwright/cmd/internal/job"
	"ribwright/geometry/sizing"
	"ribwright/layout/report/reasons"
)

// class makes a class: a folder for each builder, and a summary. Every core works; a
// row that cannot be made is told and passed over.
func (v verb) class(args []string, c console) error {
	r, a, replace := job.NewClass(), asked{}, false
	w, err := v.ask(args, c, r, &a, func(f *pflag.FlagSet) {
		f.BoolVar(&replace, "replace", false, "write over files of the same names that this program did not make, or that were changed since")
	})
	if err != nil {
		return err
	}
	course, err := r.Read(w)
	if err != nil {
		return v.explained(err)
	}
	summary := folder{dir: a.out, shared: true, replace: replace}
	if err := summaryHasRoom(summary, r.Table); err != nil {
		return err
	}
	p := newProgress(c, course.Len(), !a.json)
	all := work(course, p, func(b job.Built) (sizing.Status, error) {
		return folder{dir: filepath.Join(a.out, b.Folder), replace: replace}.deliver(b.Key, b.Files)
	})
	result := course.Result(all)
	if _, err := summary.deliver("", func() ([]job.Output, error) { return result.Outputs, nil }); err != nil {
		return err
	}
	failed := firstFailure(r.Table, all)
	if failed == nil || a.json { // a run that fails says so in a line; a program wants the rows all the same
		if err := a.tell(c.out, result, a.files(result.Outputs)); err != nil {
			return err
		}
	}
	return failed
}

// summaryHasRoom finds out early whether the summary can take its place, and not that
// of the table itself.
func summaryHasRoom(f folder, table string) error {
	place := filepath.Join(f.dir, job.SummaryName)
	there, err := os.Stat(place)
	if err == nil {
		if from, err := os.Stat(table); err == nil && os.SameFile(there, from) {
			return fmt.Errorf("%s is the table of builders, and the summary would take its place; give the table another name, or take another folder with --out", place)
		}
	}
	l, err := f.open()
	if err != nil {
		return err
	}
	return f.inTheWay(l, []string{job.SummaryName, listName})
}

// work makes every row on all cores, until the run is interrupted.
func work(course *job.Course, p *progress, deliver func(job.Built) (sizing.Status, error)) []sizing.Outcome {
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(stop)
	all := make([]sizing.Outcome, course.Len())
	for i := range all {
		all[i] = course.Undone(i)
	}
	rows := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(all)) {
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

// firstFailure makes a run fail in which a row did, and says of the first why.
func firstFailure(table string, all []sizing.Outcome) error {
	for _, o := range all {
		if o.Status == sizing.Failed || o.Status == sizing.NotDone {
			return fmt.Errorf("%s: line %d, %q: %s; %s", table, o.Line, o.Name, o.Why, reasons.ClassCount(all))
		}
	}
	return nil
}
