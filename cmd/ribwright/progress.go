package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"

	"ribwright/geometry/sizing"
	"ribwright/geometry/wording"
)

// progress tells how far a class has come: a bar on a terminal, now and then a plain
// line elsewhere. A bar of twenty lines needs no library.
type progress struct {
	mu    sync.Mutex
	bar   io.Writer // nil when standard error is no terminal
	lines io.Writer // nil for no plain lines
	total int
	count int
	told  int // tenths told in plain lines
}

// newProgress readies it for so many rows. Plain lines go where the page does, so they
// are left out where that must hold JSON alone.
func newProgress(c console, total int, lines bool) *progress {
	p := &progress{total: total}
	if lines {
		p.lines = c.out
	}
	if isTerminal(c.err) {
		p.bar = c.err
	}
	return p
}

// isTerminal reports whether words go to a screen.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0 && info.Mode()&os.ModeDevice != 0 && f.Name() != os.DevNull
}

// done counts a row. A row that failed is told at once, on the screen.
func (p *progress) done(o sizing.Outcome) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.count++
	if p.bar != nil {
		if o.Status == sizing.Failed {
			fmt.Fprintf(p.bar, "\r%s\rline %d, %s: %s\n", strings.Repeat(" ", 78), o.Line, wording.Flat(o.Name), wording.Flat(o.Why))
		}
		const wide = 40
		full := wide * p.count / p.total
		fmt.Fprintf(p.bar, "\r[%s%s] %d of %d", strings.Repeat("#", full), strings.Repeat(".", wide-full), p.count, p.total)
		return
	}
	if tenth := 10 * p.count / p.total; p.lines != nil && tenth > p.told && p.total >= 10 {
		p.told = tenth
		fmt.Fprintf(p.lines, "%d of %d\n", p.count, p.total)
	}
}

func (p *progress) end() {
	if p.bar != nil {
		fmt.Fprintln(p.bar)
	}
}
