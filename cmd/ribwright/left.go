package main

import (
	"fmt"
	"time"
)

// left tells how long the rest of many like things takes, by what those before have taken. It
// tells it in steps and keeps to what it said while that is near enough, so that a reader sees
// it count down and not jump about.
type left struct {
	now    func() time.Time
	start  time.Time
	worked int           // things that took work
	said   time.Duration // 0 before anything was said
}

// begin starts the clock.
func (l *left) begin() { l.start = l.now() }

// done counts a thing. One that took no work says nothing of those to come.
func (l *left) done(work bool) {
	if work {
		l.worked++
	}
}

// words say how long so many more take, "" where nothing is known yet or nothing is left. All of
// them are taken to want work.
func (l *left) words(rest int) string {
	if l.worked == 0 || rest == 0 {
		return ""
	}
	estimate := l.now().Sub(l.start) / time.Duration(l.worked) * time.Duration(rest)
	step := stepOf(estimate)
	rounded := (estimate + step - 1) / step * step
	if near := l.said > 0 && rounded > l.said && estimate < l.said+step/2; !near {
		l.said = rounded
	}
	return spoken(l.said)
}

// stepOf is how finely a time is told: nobody wants seconds of an hour.
func stepOf(d time.Duration) time.Duration {
	switch {
	case d > 10*time.Minute:
		return 5 * time.Minute
	case d > 90*time.Second:
		return time.Minute
	}
	return 10 * time.Second
}

// spoken letters a time that is a whole number of steps.
func spoken(d time.Duration) string {
	switch {
	case d <= 10*time.Second:
		return "a few seconds left"
	case d == time.Minute:
		return "about a minute left"
	case d < 2*time.Minute:
		return fmt.Sprintf("about %d seconds left", d/time.Second)
	}
	return fmt.Sprintf("about %d minutes left", (d+time.Minute/2)/time.Minute)
}
