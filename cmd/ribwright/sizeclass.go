package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"sync"

	"ribwright/geometry/design"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/render/reasons"
)

// How a row of a class came out.
const (
	rowMade   = "made"
	rowKept   = "kept" // whole files of the same design were there already
	rowFailed = "failed"
	rowUndone = "not done" // the run was interrupted before
)

// graduate is a row of the summary.
type graduate struct {
	line                 int
	name, use, folder    string
	status, text         string
	length, beam, depth  float64
	draft, freeboard, gm float64
	allUp, boatWeight    float64
	checksFailed         []string
}

// classRun sizes a class: a folder for each builder, whole or not there at all, and
// a summary. Every core works; a row that cannot be used is told and passed over.
func (s *sizer) classRun(c console) error {
	builders, err := s.readClass()
	if err != nil {
		return err
	}
	families, err := s.families(builders)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(s.out, 0o777); err != nil {
		return fmt.Errorf("cannot make the folder %q: %w", s.out, cause(err))
	}
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt)
	defer signal.Stop(stop)
	results := s.workOn(builders, families, stop, newProgress(c, len(builders)))
	name := "summary.csv"
	if err := saveIn(s.out, []output{{name, func(w io.Writer) error { return summarize(w, results) }}}, nil); err != nil {
		return err
	}
	return s.tellClass(c.out, results, name)
}

func (s *sizer) readClass() ([]sizing.Builder, error) {
	file, err := os.Open(s.class)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("no table of builders %q", s.class)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot open the table of builders %q: %w", s.class, cause(err))
	}
	defer file.Close()
	builders, err := sizing.ReadClass(file, s.brief, s.use)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", s.class, cause(err))
	}
	s.apart(builders)
	return builders, nil
}

// apart gives rows whose names would share a folder a fault.
func (s *sizer) apart(builders []sizing.Builder) {
	first := map[string]int{}
	for i := range builders {
		b := &builders[i]
		if b.Fault != "" {
			continue
		}
		slug := slugOf(b.Name)
		if line, taken := first[slug]; taken {
			b.Fault = fmt.Sprintf("its folder %q is that of line %d; give another name", slug, line)
			continue
		}
		first[slug] = b.Line
	}
}

func slugOf(name string) string { d := design.Design{Title: name}; return d.Slug() }

// families reads each family once.
func (s *sizer) families(builders []sizing.Builder) (map[string]*family.Family, error) {
	out := map[string]*family.Family{}
	if s.file != "" {
		f, err := s.family()
		if err != nil {
			return nil, err
		}
		for _, b := range builders {
			out[b.Use] = f
		}
		return out, nil
	}
	for _, b := range builders {
		if _, seen := out[b.Use]; seen || b.Fault != "" {
			continue
		}
		f, err := family.Shipped(b.Use)
		if err != nil {
			continue // told with the row
		}
		out[b.Use] = f
	}
	return out, nil
}

// workOn makes every row on all cores. Only what the summary needs is kept of a
// boat, so that memory does not grow with the class.
func (s *sizer) workOn(builders []sizing.Builder, families map[string]*family.Family, stop <-chan os.Signal, p *progress) []graduate {
	results := make([]graduate, len(builders))
	for i, b := range builders {
		results[i] = graduate{line: b.Line, name: b.Name, use: b.Use, status: rowUndone, text: "the run was interrupted; run it again to go on"}
	}
	rows := make(chan int)
	var work sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(builders)) {
		work.Go(func() {
			for i := range rows {
				s.graduate(&results[i], builders[i], families)
				p.done(results[i])
			}
		})
	}
loop:
	for i := range builders {
		select {
		case <-stop:
			break loop
		case rows <- i:
		}
	}
	close(rows)
	work.Wait()
	p.end()
	return results
}

// graduate makes one row. A fault of the program's own spoils that row alone.
func (s *sizer) graduate(g *graduate, b sizing.Builder, families map[string]*family.Family) {
	fail := func(err error) { g.status, g.text = rowFailed, flat(err.Error()) }
	defer func() {
		if r := recover(); r != nil {
			fail(fmt.Errorf("a fault in the program itself (%v)", r))
		}
	}()
	g.text = ""
	if b.Fault != "" {
		fail(errors.New(b.Fault))
		return
	}
	f := families[b.Use]
	if f == nil {
		_, err := family.Shipped(b.Use)
		fail(err)
		return
	}
	boat, err := sizing.Size(f, b.Brief)
	if err != nil {
		fail(err)
		return
	}
	g.fill(boat)
	if g.status, err = s.deliver(boat); err != nil {
		fail(err)
	}
}

// fill takes what the summary tells of a boat.
func (g *graduate) fill(b *sizing.Boat) {
	h := b.Design.Hull
	g.folder = b.Design.Slug()
	g.length, g.beam, g.depth = float64(h.Length), float64(h.Beam), float64(h.Depth)
	g.draft, g.freeboard, g.gm = b.Found["draft"], b.Found["freeboard"], b.Found["gm"]
	g.allUp, g.boatWeight = b.Found["all_up"], b.Found["boat_weight"]
	for _, v := range b.Failures() {
		g.checksFailed = append(g.checksFailed, v.About)
	}
}

// deliver writes a boat's folder, all of it or nothing: into a draft beside its
// place, which takes the place when it is whole. A folder that already holds the
// same design and all files is kept.
func (s *sizer) deliver(boat *sizing.Boat) (string, error) {
	slug := boat.Design.Slug()
	place := filepath.Join(s.out, slug)
	outs := []output{{slug + ".toml", boat.Write}, {slug + "-reasons.txt", func(w io.Writer) error { return reasons.Page(w, boat) }}}
	if s.isWhole(place, outs, boat) {
		return rowKept, nil
	}
	if s.loft {
		more, err := s.patterns(boat)
		if err != nil {
			return "", err
		}
		outs = append(outs, more...)
	}
	if left, err := filepath.Glob(filepath.Join(s.out, "."+slug+"~*")); err == nil {
		for _, l := range left { // what a run that was killed left behind
			os.RemoveAll(l)
		}
	}
	draft, err := os.MkdirTemp(s.out, "."+slug+"~*.draft")
	if err != nil {
		return "", fmt.Errorf("cannot make a folder in %q: %w", s.out, cause(err))
	}
	defer os.RemoveAll(draft) // gone already when all went well
	if err := saveIn(draft, outs, nil); err != nil {
		return "", err
	}
	if err := os.Chmod(draft, 0o755); err != nil {
		return "", cause(err)
	}
	return rowMade, replace(place, draft)
}

// replace puts a whole folder in the place of an older one.
func replace(place, draft string) error {
	old := draft + ".old"
	err := os.Rename(place, old)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("cannot replace %s: %w", place, cause(err))
	}
	if err := os.Rename(draft, place); err != nil {
		os.Rename(old, place) // back as it was, as well as can be
		return fmt.Errorf("cannot put %s in place: %w", place, cause(err))
	}
	return os.RemoveAll(old)
}

// isWhole reports whether a folder holds the same design and reasons, and the
// patterns when they are asked for. Folders come into place whole, so what is
// there of the same design is all there.
func (s *sizer) isWhole(place string, outs []output, boat *sizing.Boat) bool {
	for _, o := range outs {
		data, err := os.ReadFile(filepath.Join(place, o.name))
		var now strings.Builder
		if err != nil || o.write(&now) != nil || now.String() != string(data) {
			return false
		}
	}
	if !s.loft {
		return true
	}
	slug := boat.Design.Slug()
	for _, name := range []string{slug + "-patterns-" + s.printer.setup.Size.Name + ".pdf", slug + "-cut.svg", slug + "-cut.dxf", slug + "-numbers.json"} {
		if _, err := os.Stat(filepath.Join(place, name)); err != nil {
			return false
		}
	}
	return true
}

// summarize writes the summary, one line a row, in the order of the class.
func summarize(w io.Writer, results []graduate) error {
	c := csv.NewWriter(w)
	rows := [][]string{{"line", "name", "family", "status", "folder", "length_mm", "beam_mm", "depth_mm", "all_up_kg", "boat_kg", "draft_mm", "freeboard_mm", "gm_mm", "checks_failed", "text"}}
	for _, g := range results {
		row := []string{fmt.Sprint(g.line), guarded(g.name), guarded(g.use), g.status, g.folder}
		for _, v := range []struct {
			v float64
			d int
		}{{g.length, 0}, {g.beam, 0}, {g.depth, 0}, {g.allUp, 1}, {g.boatWeight, 1}, {g.draft, 0}, {g.freeboard, 0}, {g.gm, 0}} {
			text := ""
			if g.length > 0 {
				text = fmt.Sprintf("%.*f", v.d, v.v)
			}
			row = append(row, text)
		}
		rows = append(rows, append(row, strings.Join(g.checksFailed, " "), guarded(g.text)))
	}
	return c.WriteAll(rows)
}

// guarded keeps a spreadsheet from taking a cell for a formula.
func guarded(s string) string {
	s = flat(s)
	if s != "" && strings.ContainsRune("=+-@", rune(s[0])) {
		return "'" + s
	}
	return s
}

// tellClass says how many came out how; a failed row makes the run fail.
func (s *sizer) tellClass(w io.Writer, results []graduate, name string) error {
	count := map[string]int{}
	unsafe := 0
	var first *graduate
	for i, g := range results {
		count[g.status]++
		if len(g.checksFailed) > 0 {
			unsafe++
		}
		if first == nil && (g.status == rowFailed || g.status == rowUndone) {
			first = &results[i]
		}
	}
	text := fmt.Sprintf("%d builders: %d made, %d kept from before, %d failed, %d not done; %s",
		len(results), count[rowMade], count[rowKept], count[rowFailed], count[rowUndone], filepath.Join(s.out, name))
	if unsafe > 0 {
		text += fmt.Sprintf("\n%d of the boats fail a check of their family; see the column checks_failed", unsafe)
	}
	if first != nil {
		return fmt.Errorf("%s: line %d, %q: %s; %s", s.class, first.line, first.name, first.text, text)
	}
	_, err := fmt.Fprintf(w, "%s\n\n%s", text, caution())
	return err
}
