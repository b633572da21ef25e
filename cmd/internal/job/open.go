package job

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"time"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/wording"
)

// Files gives a file of somebody's by the name that a request or a design has for it:
// from a folder, from a message, from a browser's memory.
//
// Errors: one that is fs.ErrNotExist where there is no such file; any other in words
// for people.
type Files func(name string) ([]byte, error)

// Subject is the design that a request is of, and how it is told of.
type Subject struct {
	Design string // a shipped one's name or a file's
	Units  measure.System
}

// Name takes the design.
func (s *Subject) Name(names []string) { s.Design = names[0] }

// Source is the design that the job's files are made from.
func (s *Subject) Source() string { return s.Design }

// usual is the design of a request that names none.
func usual() Subject { return Subject{Design: design.ShippedNames()[0]} }

// World is what a job may know besides its request.
type World struct {
	Files   Files     // nil for none
	Made    time.Time // the date that stands in files
	Program string    // which program makes them, "" where that does not matter
	Kept    *Kept     // facts of the request before this one; nil where none are kept
}

// UsualDate stands in every file where nobody asks for another: the same design gives
// the same bytes on any day.
func UsualDate() time.Time { return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) }

// read returns a file. what says what kind of file it is, and other what may be given
// instead, "" for nothing.
func (f Files) read(name, what, other string) ([]byte, error) {
	var data []byte
	err := fs.ErrNotExist
	if f != nil {
		data, err = f(name)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist) && other != "":
		return nil, fmt.Errorf("no %s %q; %s", what, name, other)
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("no %s %q", what, name)
	}
	return data, of(fmt.Sprintf("cannot read the %s %q", what, name), err)
}

// open returns a shipped design by its name, or reads a design file.
func (w World) open(name string) (*design.Design, error) {
	shipped := design.ShippedNames()
	if slices.Contains(shipped, name) {
		return design.Shipped(name)
	}
	other := "give a file, or one of " + strings.Join(shipped, ", ")
	if near := wording.Nearest(strings.ToLower(name), shipped); near != "" {
		other = fmt.Sprintf("did you mean the shipped design %s?", near)
	}
	data, err := w.Files.read(name, "design file", other)
	if err != nil {
		return nil, err
	}
	return design.Decode(bytes.NewReader(data), name)
}

// table reads a table of offsets.
func (w World) table(name string) (*offsets.Table, error) {
	data, err := w.Files.read(name, "table of offsets", "")
	if err != nil {
		return nil, err
	}
	return offsets.Read(bytes.NewReader(data), name)
}
