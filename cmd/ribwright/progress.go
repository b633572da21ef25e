package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"

	"ribwright/geometry/sizing"
	"ribwright/geometry/wording"
)

// progress tells how far a class has come: on a terminal one line that counts builders and
// says how long the rest takes, elsewhere a plain line now and then.
type progress struct {
	mu     sync.Mutex
	screen io.Writer // nil when standard error is no terminal
	lines  io.Writer // nil for no plain lines
	total  int
	count  int
	told   int // tenths told in plain lines
	wide   int // of the longest line on the screen
	left   left
}

// newProgress readies it for so many rows. Plain lines go where the page does, so they
// are left out where that must hold JSON alone.
func newProgress(c console, total int, lines bool) *progress {
	p := &progress{total: total, left: left{now: time.Now}}
	if lines {
		p.lines = c.out
	}
	if isTerminal(c.err) {
		p.screen = c.err
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

// begin starts the clock and says what is waited for.
func (p *progress) begin() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.left.begin()
	p.show()
}

// done counts a row. A row that failed is told at once, on the screen.
func (p *progress) done(o sizing.Outcome) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.count++
	p.left.done(o.Status != sizing.Kept)
	if p.screen != nil && o.Status == sizing.Failed {
		p.clear()
		fmt.Fprintf(p.screen, "line %d, %s: %s\n", o.Line, wording.Flat(o.Name), wording.Flat(o.Why))
	}
	if p.show(); p.screen != nil {
		return
	}
	if tenth := 10 * p.count / p.total; p.lines != nil && tenth > p.told && p.total >= 10 {
		p.told = tenth
		fmt.Fprintf(p.lines, "%d of %d\n", p.count, p.total)
	}
}

// show writes the line on the screen over the one before.
func (p *progress) show() {
	if p.screen == nil {
		return
	}
	line := fmt.Sprintf("%d of %s", p.count, wording.Counted(p.total, "builder"))
	if words := p.left.words(p.total - p.count); words != "" {
		line += ", " + words
	}
	fmt.Fprintf(p.screen, "\r%s%s", line, strings.Repeat(" ", max(0, p.wide-len(line))))
	p.wide = max(p.wide, len(line))
}

// clear leaves an empty line, the next words at its beginning.
func (p *progress) clear() {
	fmt.Fprintf(p.screen, "\r%s\r", strings.Repeat(" ", p.wide))
	p.wide = 0
}

// end takes the line off the screen.
func (p *progress) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.screen != nil {
		p.clear()
	}
}
