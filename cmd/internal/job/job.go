// Package job is the engine behind every front end: one typed request goes in, one
// typed result comes out, with what is told and the files that are made. It opens
// nothing, asks no clock and keeps nothing between two jobs.
package job

import (
	"fmt"
	"io"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/layout/report"
)

// Request is what is asked of the engine: plain values, whose defaults hold until a
// field is set.
type Request interface {
	// Fields lists the choices, each bound to this request.
	Fields() []Field
	// Name says of which designs, tables or other files the job is, in the order in
	// which they are given; none where the request has a default.
	Name(names []string)
	// Do works it out.
	//
	// Errors: *Misuse for a wrong request, any other for what cannot be worked out.
	Do(World) (*Result, error)
}

// Result is what a job found and made.
type Result struct {
	Text    string        // to be told as it is, instead of a report; "" for most
	Report  report.Report // for people
	Numbers any           // for programs, to be written as JSON; nil where there is none
	Outputs []Output

	Warnings finding.List // why the boat should not be built or used as it is, a line each
}

// Output is one file.
type Output struct {
	Name  string                // without a folder
	Says  string                // what it is; "" where the next one says it of both
	Write func(io.Writer) error // the whole file; may be called again
}

// Misuse is a request that cannot be met as it is: its fields are wrong, or do not go
// together.
type Misuse struct {
	Fields []string // their names; none where it is something else, as what is named
	Err    error
}

// Error says which fields, and what is accepted.
func (m *Misuse) Error() string {
	if len(m.Fields) == 0 {
		return m.Err.Error()
	}
	return strings.Join(m.Fields, " and ") + ": " + m.Err.Error()
}

// Unwrap returns what is wrong.
func (m *Misuse) Unwrap() error { return m.Err }

// wrong refuses the values of the fields named, which may be several with commas
// between them or none; nil where there is nothing to refuse.
func wrong(fields string, err error) error {
	if err == nil {
		return nil
	}
	m := &Misuse{Err: err}
	if fields != "" {
		m.Fields = strings.Split(fields, ",")
	}
	return m
}

// misuse refuses fields in words.
func misuse(fields, format string, args ...any) error {
	return wrong(fields, fmt.Errorf(format, args...))
}

// of puts in front of an error what it is about.
func of(about string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s: %w", about, err)
}
