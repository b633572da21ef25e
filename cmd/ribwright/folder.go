package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/sizing"
)

// folder is where a set of files goes that a later run may replace. A list in it says
// which files the program made; it replaces or removes these alone, and only while they
// are as it made them.
type folder struct {
	dir     string
	shared  bool      // it may hold anything; else one that holds things and no list is somebody's
	replace bool      // write over files of the same names, whoever made them
	from    string    // the design that the files are made from, as it lies from the folder; "" where that is not told
	told    list      // notes, and files below, that its list is to tell of besides
	disk    keep.Disk // nil for this machine's
}

// deliver makes a set of files in the folder, or keeps the one that an earlier run has
// made with the same key. Files of an older set that are not in this one are removed;
// whatever else lies in the folder stays.
//
// Errors: something in the way that the program did not make, or files that cannot be
// worked out or written.
func (f folder) deliver(key string, files func() ([]job.Output, error)) (sizing.Status, error) {
	if err := f.keeper().Heal(f.dir); err != nil {
		return "", err
	}
	old, err := f.open()
	if err != nil {
		return "", err
	}
	if key != "" && old.whole && old.key == key && f.untouched(old) {
		return sizing.Kept, nil
	}
	outs, err := files()
	if err != nil {
		return "", err
	}
	set, now, err := f.inMemory(outs, key)
	if err != nil {
		return "", err
	}
	if err := f.inTheWay(old, append(now.names(), listName)); err != nil {
		return "", err
	}
	return sizing.Made, f.write(set, now, old)
}

// keeper puts its sets in place.
func (f folder) keeper() keep.Keeper {
	if f.disk == nil {
		return keep.Usual()
	}
	return keep.Keeper{Disk: f.disk}
}

// open reads the folder's list; without one it is empty.
//
// Errors: a folder of somebody else, or something else in its place.
func (f folder) open() (list, error) {
	info, err := os.Lstat(f.dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return list{}, nil
	case err != nil:
		return list{}, fmt.Errorf("cannot look into %s: %w", f.dir, keep.Cause(err))
	case f.shared:
		if info, err = os.Stat(f.dir); err == nil && !info.IsDir() {
			return list{}, fmt.Errorf("%s is a file; take another folder with --out", f.dir)
		}
	case !info.IsDir():
		return list{}, fmt.Errorf("%s is no folder and stays; give another name, or take another folder with --out", f.dir)
	}
	l := readList(filepath.Join(f.dir, listName))
	if !f.shared && len(l.below) > 0 {
		return list{}, fmt.Errorf("%s is the folder of a whole course; give another name, or take another folder with --out", f.dir)
	}
	if l.read || f.shared || f.replace {
		return l, nil
	}
	inside, err := os.ReadDir(f.dir)
	if err != nil {
		return l, fmt.Errorf("cannot look into %s: %w", f.dir, keep.Cause(err))
	}
	if len(inside) > 0 {
		return l, fmt.Errorf("%s holds files that this program did not make; give another name, take another folder with --out, or write into it with --replace", f.dir)
	}
	return l, nil
}

// untouched reports whether all files of a list are there as they were made.
func (f folder) untouched(l list) bool {
	return !slices.ContainsFunc(l.made, func(m made) bool { return !f.owns(list{made: []made{m}}, m.name) })
}

// owns reports whether a file is there as the list says that the program made it.
func (f folder) owns(l list, name string) bool { return len(f.makers(l, name)) > 0 }

// makers are the designs from which the list says that a file was made as it is, "" for one
// that is not told; none where it was not made so.
func (f folder) makers(l list, name string) (from []string) {
	path := filepath.Join(f.dir, name)
	if info, err := os.Lstat(path); err != nil || !info.Mode().IsRegular() {
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil
	}
	sum := keep.Sum(data)
	for _, m := range l.made {
		if m.sum == sum && m.name == name {
			from = append(from, m.from)
		}
	}
	return from
}

// inTheWay finds a file that would be replaced and that the program did not make, or made
// from another design of the same title.
func (f folder) inTheWay(l list, names []string) error {
	for _, name := range names {
		path := filepath.Join(f.dir, name)
		if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) || f.replace || name == listName && l.read {
			continue
		}
		from := f.makers(l, name)
		if slices.ContainsFunc(from, func(one string) bool { return one == "" || f.from == "" || one == f.from }) {
			continue
		}
		if len(from) > 0 {
			return fmt.Errorf("%s was made from %s, another design of this title; give one of the two another title or edition, take another folder with --out, or write over it with --replace", path, from[0])
		}
		return fmt.Errorf("%s was not made by this program, or was changed since; move it, take another folder with --out, or write over it with --replace", path)
	}
	return nil
}

// inMemory makes the files before any of them is written.
func (f folder) inMemory(outs []job.Output, key string) (set []keep.File, now list, err error) {
	now = list{read: true, whole: true, key: cmp.Or(key, f.told.key), below: f.told.below, notes: f.told.notes}
	for _, o := range outs {
		var b bytes.Buffer
		if err := o.Write(&b); err != nil {
			return nil, now, fmt.Errorf("cannot make %s: %w", o.Name, err)
		}
		now.made = append(now.made, made{keep.Sum(b.Bytes()), o.Name, f.from})
		set = append(set, keep.File{Path: filepath.Join(f.dir, o.Name), Write: asBytes(b.Bytes())})
	}
	return set, now, nil
}

// write puts a set and its list in the place of an older one.
func (f folder) write(set []keep.File, now, old list) error {
	var gone []string
	for _, m := range old.made {
		switch {
		case slices.Contains(now.names(), m.name):
		case f.shared && !job.OfCourse(m.name):
			now.made = append(now.made, m) // another set's
		case f.owns(old, m.name):
			gone = append(gone, filepath.Join(f.dir, m.name))
		}
	}
	list := keep.File{Path: filepath.Join(f.dir, listName), Write: asBytes([]byte(now.text()))}
	return f.keeper().Save(append(set, list), gone...)
}
