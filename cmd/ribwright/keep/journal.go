package keep

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"
)

// A journal lies in a folder while files take their places there. It says how to put back
// what was there before; a run that is cut off leaves it, and the next one in that folder
// undoes what it finds. When the journal goes, the new set counts.
const journalHead = "ribwright was stopped while it put files in place here. Its next run that writes into\n" +
	"this folder puts back what was there, and this file goes.\n"

// step is one file in a journal: one that was there, or one that is new, with the SHA-256
// sum by which it is known.
type step struct {
	name string
	had  bool
	sum  string
}

// journalText is a journal as it lies in its folder.
func journalText(steps []step) string {
	var b strings.Builder
	b.WriteString(journalHead)
	for _, s := range steps {
		if s.had {
			fmt.Fprintf(&b, "kept %s\n", s.name)
		} else {
			fmt.Fprintf(&b, "new %s %s\n", s.sum, s.name)
		}
	}
	return b.String()
}

// begins reports whether a text is a journal, or as much of one as was written.
func begins(text string) bool {
	return strings.HasPrefix(text, journalHead) || strings.HasPrefix(journalHead, text)
}

// readJournal reads one; a line that is cut short, and a name outside the folder, counts
// for nothing.
func readJournal(text string) (out []step) {
	rest, ok := strings.CutPrefix(text, journalHead)
	if !ok {
		return nil
	}
	for line := range strings.Lines(rest) {
		line, whole := strings.CutSuffix(line, "\n")
		kind, name, _ := strings.Cut(line, " ")
		s := step{name: name, had: kind == "kept"}
		if kind == "new" {
			s.sum, s.name, _ = strings.Cut(name, " ")
		}
		if whole && filepath.IsLocal(s.name) && filepath.Base(s.name) == s.name {
			out = append(out, s)
		}
	}
	return out
}

// The names that a run gives what lies in a folder for a while. The run's number is in
// each, so that another can tell whether it still works.
func journalName(run int) string { return fmt.Sprintf("ribwright-saving-%d.txt", run) }

func beside(path, what string, run int) string {
	return filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s-%d.ribwright-%s", filepath.Base(path), run, what))
}

var passing = regexp.MustCompile(`^(?:ribwright-saving-(\d+)\.txt|\..+-(\d+)\.ribwright-(?:draft|kept))$`)

// runOf tells of which run a passing file is; false for any other.
func runOf(name string) (run int, journal, ok bool) {
	m := passing.FindStringSubmatch(name)
	if m == nil {
		return 0, false, false
	}
	run, err := strconv.Atoi(m[1] + m[2])
	return run, m[1] != "", err == nil
}

// Heal puts a folder right that an earlier run left half done: it undoes its journal and
// sweeps its drafts.
//
// Errors: a run that is at it just now, or what cannot be put back.
func (k Keeper) Heal(folder string) error {
	inside, err := k.Disk.List(folder)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, syscall.ENOTDIR) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("cannot look into %s: %w", folder, Cause(err))
	}
	var left []string
	for _, e := range inside {
		run, journal, ok := runOf(e.Name())
		if !ok || !e.Type().IsRegular() {
			continue
		}
		path := filepath.Join(folder, e.Name())
		switch busy := k.busy(path, run); {
		case busy && journal:
			return fmt.Errorf("another run is putting files into %s just now; wait until it is done, and try again", folder)
		case busy:
		case journal:
			if err := k.undo(folder, run); err != nil {
				return fmt.Errorf("cannot put back what a stopped run left in %s: %w", folder, Cause(err))
			}
		default:
			left = append(left, path)
		}
	}
	for _, path := range left { // what an undone journal has put back is gone by now
		if err := k.Disk.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("cannot remove %s, which a stopped run left: %w", path, Cause(err))
		}
	}
	return nil
}

// busy reports whether another run still works on a passing file. Saving takes seconds;
// after minutes another program has the run's number.
func (k Keeper) busy(path string, run int) bool {
	if run == os.Getpid() {
		return false
	}
	info, err := k.Disk.Look(path)
	if err != nil || time.Since(info.ModTime()) > 10*time.Minute {
		return false
	}
	other, err := os.FindProcess(run)
	if err != nil {
		return false
	}
	defer other.Release()
	return !errors.Is(other.Signal(syscall.Signal(0)), os.ErrProcessDone)
}

// undo puts back what a run's journal in a folder says, last first, and removes the journal.
func (k Keeper) undo(folder string, run int) error {
	journal := filepath.Join(folder, journalName(run))
	text, err := k.Disk.Read(journal)
	if err != nil || !begins(string(text)) {
		return err
	}
	steps := readJournal(string(text))
	slices.Reverse(steps)
	for _, s := range steps {
		if err := k.putBack(filepath.Join(folder, s.name), s, run); err != nil {
			return err
		}
	}
	return k.Disk.Remove(journal)
}

// putBack undoes a step as far as it was done.
func (k Keeper) putBack(path string, s step, run int) error {
	if s.had {
		kept := beside(path, "kept", run)
		if err := k.Disk.Rename(kept, path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		// Two names of one file stay two when the one is renamed to the other.
		if err := k.Disk.Remove(kept); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	}
	data, err := k.Disk.Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if Sum(data) != s.sum {
		return nil // somebody else's by now
	}
	return k.Disk.Remove(path)
}

// Sum is the SHA-256 sum of a file's bytes, piece behind piece, as programs that check sums
// write it.
func Sum(data ...[]byte) string {
	s := sha256.New()
	for _, piece := range data {
		s.Write(piece) // never fails
	}
	return hex.EncodeToString(s.Sum(nil))
}
