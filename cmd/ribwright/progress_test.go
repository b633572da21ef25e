package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"ribwright/geometry/sizing"
)

// clock is one that tests set.
type clock struct{ at time.Time }

func (c *clock) now() time.Time { return c.at }

// shown is what a reader sees of words on a screen: the lines that stay, and all that stood on
// the last one for a while.
func shown(words string) (stay, moments []string) {
	for _, line := range strings.SplitAfter(words, "\n") {
		seen := ""
		for _, over := range strings.Split(strings.TrimSuffix(line, "\n"), "\r") {
			if n := len(over); n < len(seen) {
				over += seen[n:]
			}
			if seen = over; strings.TrimSpace(seen) != "" {
				moments = append(moments, strings.TrimRight(seen, " "))
			}
		}
		stay = append(stay, strings.TrimRight(seen, " "))
	}
	return stay, moments
}

// TestProgressOnScreen: forty builders of 6 s each are counted on one line, with the time that
// is left: it falls step by step from what the first, of 8 s, let expect, never rises, says nothing before the first is made, and is gone at the end.
func TestProgressOnScreen(t *testing.T) {
	var screen, lines bytes.Buffer
	c := clock{time.Unix(0, 0)}
	p := &progress{screen: &screen, lines: &lines, total: 40, left: left{now: c.now}}
	p.begin()
	for i := range 40 {
		c.at = c.at.Add(6*time.Second + time.Duration(1-i%3)*2*time.Second)
		o := sizing.Outcome{Status: sizing.Made}
		if i == 4 {
			o = sizing.Outcome{Line: 6, Name: "Ann", Status: sizing.Failed, Why: "no\nweight"}
		}
		p.done(o)
	}
	p.end()
	stay, moments := shown(screen.String())
	if len(stay) != 2 || stay[0] != "line 6, Ann: no weight" || stay[1] != "" || lines.Len() > 0 {
		t.Errorf("what stays is %q, and elsewhere %q", stay, lines.String())
	}
	if moments[0] != "0 of 40 builders" || moments[len(moments)-1] != "40 of 40 builders" {
		t.Errorf("it begins with %q and ends with %q", moments[0], moments[len(moments)-1])
	}
	var times []string
	for _, m := range moments {
		if _, words, is := strings.Cut(m, "builders, "); is && (len(times) == 0 || times[len(times)-1] != words) {
			times = append(times, words)
		}
	}
	want := "about 6 minutes left, about 5 minutes left, about 4 minutes left, about 3 minutes left, about 2 minutes left, about 90 seconds left, about 80 seconds left, about 70 seconds left, " +
		"about a minute left, about 50 seconds left, about 40 seconds left, about 30 seconds left, about 20 seconds left, a few seconds left"
	if got := strings.Join(times, ", "); got != want {
		t.Errorf("the times told are %s", got)
	}
	for _, m := range moments {
		if len(m) > 79 {
			t.Errorf("%q is wider than a terminal", m)
		}
	}
}

// TestTimeLeft: what was there already says nothing of what is to be made; the time told keeps
// still while estimates waver about it, follows when work gets slower, and rises by no less than half a step.
func TestTimeLeft(t *testing.T) {
	c := clock{time.Unix(0, 0)}
	l := left{now: c.now}
	l.begin()
	for range 50 {
		l.done(false)
	}
	if got := l.words(50); got != "" {
		t.Errorf("nothing was made, and %q is told", got)
	}
	var told []string
	for i, sec := range []int{4, 4, 4, 4, 5, 4, 5, 40, 40} {
		c.at = c.at.Add(time.Duration(sec) * time.Second)
		l.done(true)
		if words := l.words(49 - i); len(told) == 0 || told[len(told)-1] != words {
			told = append(told, words)
		}
	}
	// 49 of 4 s are 196 s; with one slow one 42 of 70/8 s are 368 s, with two 41 of 110/9 s 501 s.
	if want := "about 4 minutes left; about 7 minutes left; about 9 minutes left"; strings.Join(told, "; ") != want {
		t.Errorf("%q, want %q", told, want)
	}
	c, l = clock{time.Unix(0, 0)}, left{now: l.now}
	l.begin()
	c.at = c.at.Add(10 * time.Second)
	l.done(true)
	for i, rest := range []int{18, 19, 17, 20, 22, 19, 18} {
		want := fmt.Sprintf("about %d minutes left", []int{3, 3, 3, 3, 4, 4, 3}[i])
		if got := l.words(rest); got != want {
			t.Errorf("then %d of 10 s: %q, want %q", rest, got, want)
		}
	}
	for _, s := range []struct {
		each time.Duration
		rest int
		want string
	}{{time.Second, 3, "a few seconds left"}, {time.Second, 25, "about 30 seconds left"}, {time.Second, 90, "about 90 seconds left"}, {time.Second, 91, "about 2 minutes left"}, {time.Minute, 61, "about 65 minutes left"}, {time.Minute, 0, ""}} {
		c := clock{time.Unix(0, 0)}
		l := left{now: c.now}
		l.begin()
		c.at = c.at.Add(s.each)
		l.done(true)
		if got := l.words(s.rest); got != s.want {
			t.Errorf("%d of %v: %q, want %q", s.rest, s.each, got, s.want)
		}
	}
}

// TestProgressElsewhere: in a pipe every tenth is a plain line, without a time, and a terminal's
// line is written nowhere.
func TestProgressElsewhere(t *testing.T) {
	var out, errs bytes.Buffer
	p := newProgress(console{&out, &errs}, 20, true)
	p.begin()
	want := ""
	for i := range 20 {
		if p.done(sizing.Outcome{Status: sizing.Made}); i%2 == 1 {
			want += fmt.Sprintf("%d of 20\n", i+1)
		}
	}
	if p.end(); out.String() != want || errs.Len() > 0 {
		t.Errorf("%q and %q, want %q", out.String(), errs.String(), want)
	}
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	defer w.Close()
	if isTerminal(w) || isTerminal(io.Discard) {
		t.Error("a pipe is taken for a terminal")
	}
}
