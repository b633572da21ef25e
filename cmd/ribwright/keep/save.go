// Package keep puts sets of files in place: each set as a whole or not at all, whatever fails
// on the way.
package keep

import (
	"bufio"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"syscall"
)

// File is one file to write.
type File struct {
	Path  string
	Write func(io.Writer) error // called once
	Sum   string                // of what Write writes, as Sum gives it; "" where it is not known yet
}

// Keeper puts sets of Files in place.
type Keeper struct {
	Disk Disk
	Stop <-chan os.Signal // asks to leave all as it was; nil when nothing does
}

// Usual writes to this machine's disk and is not to be stopped.
func Usual() Keeper { return Keeper{Disk: Here{}} }

// Save puts all the files in place and takes those away that are gone, or does neither:
// each file is written under another name beside its place and brought safely to the disk;
// then a journal says how to put back what was there; then they take their places. What a
// stopped run has left is put right first. Where the files lie in several folders each has
// a journal of its own, and a machine that dies between their ends may keep one set in the
// one and the other in the other.
//
// Errors: what is no plain file in the way, no room, a place that may not be written, a run
// that is at it just now. All is as it was then; where it could not be put back, the
// journal stays and the error says so.
func (k Keeper) Save(files []File, gone ...string) error {
	s := saving{Keeper: k, run: os.Getpid()}
	defer s.sweep("draft")
	if err := s.prepare(files); err != nil {
		return s.leave(err)
	}
	for _, f := range files {
		if s.stopped() {
			return s.leave(ErrStopped)
		}
		if err := s.write(f); err != nil {
			return s.leave(fmt.Errorf("cannot write %s: %w", f.Path, Cause(err)))
		}
	}
	for _, path := range gone {
		s.places = append(s.places, place{path: path, step: step{name: filepath.Base(path), had: true}, gone: true})
	}
	if s.stopped() {
		return s.leave(ErrStopped)
	}
	if err := s.settle(); err != nil {
		return s.leave(s.giveUp(err))
	}
	s.sweep("kept")
	return nil
}

// leave removes the drafts, and the folders that were made for this set, and returns why.
func (s *saving) leave(why error) error {
	s.sweep("draft")
	for _, dir := range s.made {
		s.Disk.Remove(dir) // stays when something is in it
	}
	return why
}

// prepare makes the folders, puts right what a stopped run has left in them, and finds out
// whether every file can take its place.
func (s *saving) prepare(files []File) error {
	var known []string
	for _, f := range files {
		dir := filepath.Dir(f.Path)
		if !slices.Contains(known, dir) {
			known = append(known, dir)
			if _, err := s.Disk.Look(dir); errors.Is(err, fs.ErrNotExist) {
				s.made = append(s.made, dir)
			}
			if err := s.Disk.MakeFolder(dir); err != nil {
				return fmt.Errorf("cannot make the folder %q: %w", dir, Cause(err))
			}
			if err := s.Heal(dir); err != nil {
				return err
			}
		}
		if err := s.room(f.Path); err != nil {
			return err
		}
	}
	return nil
}

// room finds out whether a file can take its place.
func (k Keeper) room(path string) error {
	switch info, err := k.Disk.Look(path); {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("cannot write %s: %w", path, Cause(err))
	case info.IsDir():
		return fmt.Errorf("cannot write %s: a folder of that name is in the way", path)
	case info.Mode()&fs.ModeSymlink != 0:
		return fmt.Errorf("cannot write %s: a link of that name is in the way; remove it, or take another folder", path)
	case !info.Mode().IsRegular():
		return fmt.Errorf("cannot write %s: something that is no plain file is in the way", path)
	}
	return nil
}

// saving is one set on its way into its places.
type saving struct {
	Keeper
	run      int
	places   []place
	journals []string // the folders that have one
	made     []string // the folders that were not there before
}

// place is where one file goes, or where one goes away.
type place struct {
	path string
	step
	gone bool
}

// ErrStopped is told when somebody asked to leave all as it was.
var ErrStopped = errors.New("stopped; nothing was changed")

// stopped says whether somebody has.
func (s *saving) stopped() bool {
	select {
	case <-s.Stop:
		return true
	default:
		return false
	}
}

// giveUp puts back what was there, last first, and says why it had to.
func (s *saving) giveUp(why error) error {
	var failed error
	for _, p := range slices.Backward(s.places) {
		failed = cmp.Or(failed, s.putBack(p.path, p.step, s.run))
	}
	for _, dir := range s.journals {
		if failed != nil {
			break // the journals are still wanted
		}
		if err := s.Disk.Remove(filepath.Join(dir, journalName(s.run))); !errors.Is(err, fs.ErrNotExist) {
			failed = err
		}
	}
	if failed != nil {
		return fmt.Errorf("%w; what was there could not be put back (%w): the next run into that folder tries again", why, Cause(failed))
	}
	return why
}

// write makes a file's draft.
func (s *saving) write(f File) error {
	old, err := s.Disk.Look(f.Path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	p := place{path: f.Path, step: step{name: filepath.Base(f.Path), had: err == nil}}
	d, err := s.Disk.Create(beside(f.Path, "draft", s.run))
	if err != nil {
		return err
	}
	s.places = append(s.places, p) // from here on the draft is swept
	s.places[len(s.places)-1].sum, err = fill(d, f)
	if err == nil && p.had {
		err = d.Chmod(old.Mode().Perm())
	}
	// A disk may only now say that it is full; but the first word counts.
	if closing := d.Close(); err == nil {
		err = closing
	}
	return err
}

// fill writes a file into its draft, has it brought to the disk, and returns its sum.
func fill(d Draft, f File) (sum string, err error) {
	to, sums := io.Writer(d), sha256.New()
	if f.Sum == "" {
		to = io.MultiWriter(d, sums)
	}
	buffer := bufio.NewWriter(to)
	if err := f.Write(buffer); err != nil {
		return "", err
	}
	if err := buffer.Flush(); err != nil {
		return "", err
	}
	return cmp.Or(f.Sum, hex.EncodeToString(sums.Sum(nil))), d.Sync()
}

// settle writes the journals, gives every file its place, and removes the journals: from
// then on the new set counts.
func (s *saving) settle() error {
	folders := map[string][]step{}
	for _, p := range s.places {
		dir := filepath.Dir(p.path)
		folders[dir] = append(folders[dir], p.step)
	}
	for _, dir := range slices.Sorted(maps.Keys(folders)) {
		if err := s.journal(dir, folders[dir]); err != nil {
			return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, journalName(s.run)), Cause(err))
		}
	}
	for _, p := range s.places {
		if err := s.put(p); err != nil {
			return fmt.Errorf("cannot put %s in place: %w", p.path, Cause(err))
		}
	}
	for _, dir := range s.journals {
		s.Disk.SyncFolder(dir) // some systems cannot, and say so
		if err := s.Disk.Remove(filepath.Join(dir, journalName(s.run))); err != nil {
			return fmt.Errorf("cannot remove %s: %w", filepath.Join(dir, journalName(s.run)), Cause(err))
		}
	}
	return nil
}

// journal writes a folder's journal and has it brought to the disk.
func (s *saving) journal(dir string, steps []step) error {
	d, err := s.Disk.Create(filepath.Join(dir, journalName(s.run)))
	if err != nil {
		return err
	}
	s.journals = append(s.journals, dir)
	_, err = io.WriteString(d, journalText(steps))
	if err == nil {
		err = d.Sync()
	}
	if closing := d.Close(); err == nil {
		err = closing
	}
	s.Disk.SyncFolder(dir)
	return err
}

// put gives one file its place. What was there keeps a second name until all is done, so
// that its place is never empty; where a file can have one name only, it is empty for a
// moment.
func (s *saving) put(p place) error {
	kept := beside(p.path, "kept", s.run)
	if p.gone {
		return s.Disk.Rename(p.path, kept)
	}
	if p.had && s.Disk.Link(p.path, kept) != nil {
		if err := s.Disk.Rename(p.path, kept); err != nil {
			return err
		}
	}
	return s.Disk.Rename(beside(p.path, "draft", s.run), p.path)
}

// sweep removes what lies beside the places for a while. What cannot be removed the next
// run tries again.
func (s *saving) sweep(what string) {
	for _, p := range s.places {
		s.Disk.Remove(beside(p.path, what, s.run))
	}
}

// mostRead is how much of a file is read, bytes: more than the largest that any
// reader takes, so that each can refuse a wrong file by itself.
const mostRead = 4<<20 + 1

// ReadFile gives the engine a file by its path.
func ReadFile(name string) ([]byte, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, Cause(err)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, mostRead))
	return data, Cause(err)
}

// Cause strips the system call and the passing file name from an error, and
// puts what a builder may meet in plain words.
func Cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	switch {
	case errors.Is(err, syscall.ENOTDIR):
		return errors.New("a file is in the way, where a folder should be")
	case errors.Is(err, syscall.EISDIR):
		return errors.New("it is a folder, not a file")
	}
	return err
}
