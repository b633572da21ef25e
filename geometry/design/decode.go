package design

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// maxFile is the largest design file read, bytes: a hundred times what the
// longest sensible design needs, and little enough to refuse a wrong file fast.
const maxFile = 1 << 20

// Decode reads and checks a design file. The name is used in messages only.
//
// Units: every length and angle in the file carries its own.
// Returns: a design that has passed Check, with defaults filled in for keys
// that have one and the after half mirrored when it is symmetric.
// Errors: *Fault for anything wrong in the file; the reader's own error.
func Decode(r io.Reader, name string) (*Design, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(data) > maxFile {
		return nil, &Fault{File: name, Text: "this file is larger than 1 MB: not a design file"}
	}
	// Editors on some systems put a byte order mark in front.
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	d := Defaults()
	dec := toml.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	if err := dec.Decode(d); err != nil {
		return nil, decodeFault(err, name)
	}
	d.mirror()
	if p := d.Check(); p != nil {
		return nil, &Fault{File: name, Line: lineOf(data, p.Key), Key: p.Key, Text: p.Text}
	}
	return d, nil
}

// Encode writes d as a design file with every key described, such that Decode
// gives the same design back.
func Encode(w io.Writer, d *Design) error {
	enc := toml.NewEncoder(w)
	return enc.Encode(d)
}

// Defaults returns a design in which every key that has a default carries it.
// They are common practice, no source, unless a comment names one.
func Defaults() *Design {
	return &Design{
		Gunwale: Gunwale{Plies: 1, ScarfSlope: 8},
		Ribs: Ribs{
			AtMidship: true, TenonGap: 2, FitWidth: 0.3, FitThickness: 0.3,
			Trim: 12, Tolerance: 1,
		},
		Skin: Skin{Thickness: 0.6, Mass: 600},
	}
}

// decodeFault turns the reader's errors into the builder's words.
func decodeFault(err error, name string) error {
	var strict *toml.StrictMissingError
	if errors.As(err, &strict) && len(strict.Errors) > 0 {
		e := &strict.Errors[0]
		line, _ := e.Position()
		return &Fault{File: name, Line: line, Key: strings.Join(e.Key(), "."),
			Text: "no such key" + nearestKey(e.Key())}
	}
	var at *toml.DecodeError
	if errors.As(err, &at) {
		line, _ := at.Position()
		key := strings.Join(at.Key(), ".")
		return &Fault{File: name, Line: line, Key: key, Text: plainWords(at.Error(), key)}
	}
	return &Fault{File: name, Text: plainWords(err.Error(), "")}
}

// plainWords replaces the library's Go words by what the key expects.
func plainWords(text, key string) string {
	text = strings.TrimPrefix(text, "toml: ")
	if want := wanted(key); want != "" && (strings.Contains(text, "cannot ") || strings.Contains(text, "struct")) {
		return "this key takes " + want
	}
	return text
}
