package keep

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// HoldName is the file that lies in a folder while a run holds it.
const HoldName = "ribwright-working.txt"

const holdHead = "ribwright is at work in this folder. This file goes when it is done; where a run was\n" +
	"ended before, the next one takes it over.\n"

// The ways in which a folder cannot be held just now.
var (
	errBusy  = errors.New("another run holds it")
	errEmpty = errors.New("another run begins to hold it, or has just let go")

	errForeign = errors.New("somebody's file")
)

// Hold keeps other runs out of a folder, which is there, until release is called: a file
// in it says so. A file that a run left which was ended is taken over.
//
// Errors: another run at work there, something else in the file's place, a folder that may
// not be written.
func Hold(folder string) (release func(), err error) {
	path := filepath.Join(folder, HoldName)
	const tries, wait = 25, 20 * time.Millisecond
	for range tries {
		if release, err = hold(path); !errors.Is(err, errEmpty) {
			break
		}
		time.Sleep(wait)
	}
	switch {
	case errors.Is(err, errBusy):
		return nil, fmt.Errorf("another run is at work in %s; wait until it is done, or take another folder with --out", folder)
	case errors.Is(err, errEmpty), errors.Is(err, errForeign):
		return nil, fmt.Errorf("%s was not made by this program; move it, or take another folder with --out", path)
	case err != nil:
		return nil, fmt.Errorf("cannot write %s: %w", path, Cause(err))
	}
	return release, nil
}

// hold takes the file at a path, once.
func hold(path string) (func(), error) {
	if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() {
		return nil, errors.New("something that is no plain file is in the way")
	}
	f, err := seize(path)
	if err != nil {
		return nil, err
	}
	if err := mine(f, path); err != nil {
		f.Close()
		return nil, err
	}
	return func() { letGo(f, path) }, nil
}

// mine makes sure that a file that nobody else can have is ours and still the one at its path.
func mine(f *os.File, path string) error {
	text, err := io.ReadAll(io.NewSectionReader(f, 0, int64(len(holdHead))+1))
	if err != nil {
		return err
	}
	have, err := f.Stat()
	if err != nil {
		return err
	}
	if there, err := os.Lstat(path); err != nil || !os.SameFile(have, there) {
		return errEmpty // the run that held it is done, and its file went
	}
	return ours(string(text))
}

// begin makes the file with its whole text at once, so that a run that is ended leaves no part
// of it; where a file can have one name only, in two steps.
//
// Errors: errEmpty where another run was quicker.
func begin(path string) error {
	draft := beside(path, "draft", os.Getpid())
	err := fresh(draft)
	if err == nil {
		err = os.Link(draft, path)
		os.Remove(draft)
	}
	if err != nil && !errors.Is(err, fs.ErrExist) && !errors.Is(err, fs.ErrNotExist) {
		err = fresh(path)
	}
	if errors.Is(err, fs.ErrExist) || errors.Is(err, fs.ErrNotExist) {
		return errEmpty
	}
	return err
}

// fresh writes the text into a file that is not there yet.
func fresh(path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = io.WriteString(f, holdHead)
	return errors.Join(err, f.Close())
}

// ours tells a file of ours from one that is not yet written, and from somebody's.
func ours(text string) error {
	switch {
	case text == holdHead:
		return nil
	case strings.HasPrefix(holdHead, text):
		return errEmpty
	}
	return errForeign
}
