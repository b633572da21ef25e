// Package folder puts the files that a run makes into a folder, with a list of what the program
// made there. By the list a later run knows what it may replace or remove: files that are as
// it made them, and nothing else.
package folder

import (
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

// Folder is where a set of files goes that a later run may replace. A list in it says
// which files the program made; it replaces or removes these alone, and only while they
// are as it made them.
type Folder struct {
	Dir     string
	Shared  bool      // it may hold anything; else one that holds things and no list is somebody's
	Replace bool      // write over files of the same names, whoever made them
	From    string    // the design that the files are made from, as it lies from the folder; "" where that is not told
	Told    List      // notes, and files below, that its list is to tell of besides
	Disk    keep.Disk // nil for this machine's
}

// Deliver makes a set of files in the folder, or keeps the one that an earlier run has
// made with the same key. Files of an older set that are not in this one are removed;
// whatever else lies in the folder stays.
//
// Errors: something in the way that the program did not make, or files that cannot be
// worked out or written.
func (f Folder) Deliver(key string, files func() ([]job.Output, error)) (sizing.Status, error) {
	if err := f.keeper().Heal(f.Dir); err != nil {
		return "", err
	}
	old, err := f.open()
	if err != nil {
		return "", err
	}
	if key != "" && old.whole && old.Key == key && f.untouched(old) {
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
	if err := f.inTheWay(old, append(now.names(), ListName)); err != nil {
		return "", err
	}
	return sizing.Made, f.write(set, now, old)
}

// keeper puts its sets in place.
func (f Folder) keeper() keep.Keeper {
	if f.Disk == nil {
		return keep.Usual()
	}
	return keep.Keeper{Disk: f.Disk}
}

// open reads the folder's list; without one it is empty.
//
// Errors: a folder of somebody else, or something else in its place.
func (f Folder) open() (List, error) {
	info, err := os.Lstat(f.Dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return List{}, nil
	case err != nil:
		return List{}, fmt.Errorf("cannot look into %s: %w", f.Dir, keep.Cause(err))
	case f.Shared:
		if info, err = os.Stat(f.Dir); err == nil && !info.IsDir() {
			return List{}, fmt.Errorf("%s is a file; take another folder with --out", f.Dir)
		}
	case !info.IsDir():
		return List{}, fmt.Errorf("%s is no folder and stays; give another name, or take another folder with --out", f.Dir)
	}
	l := Listed(f.Dir)
	if !f.Shared && len(l.Below) > 0 {
		return List{}, fmt.Errorf("%s is the folder of a whole course; give another name, or take another folder with --out", f.Dir)
	}
	if l.read || f.Shared || f.Replace {
		return l, nil
	}
	inside, err := os.ReadDir(f.Dir)
	if err != nil {
		return l, fmt.Errorf("cannot look into %s: %w", f.Dir, keep.Cause(err))
	}
	if len(inside) > 0 {
		return l, fmt.Errorf("%s holds files that this program did not make; give another name, take another folder with --out, or write into it with --replace", f.Dir)
	}
	return l, nil
}

// untouched reports whether all files of a list are there as they were made.
func (f Folder) untouched(l List) bool {
	return !slices.ContainsFunc(l.Made, func(m Made) bool { return !f.owns(List{Made: []Made{m}}, m.Name) })
}

// owns reports whether a file is there as the list says that the program made it.
func (f Folder) owns(l List, name string) bool { return len(f.makers(l, name)) > 0 }

// makers are the designs from which the list says that a file was made as it is, "" for one
// that is not told; none where it was not made so.
func (f Folder) makers(l List, name string) (from []string) {
	path := filepath.Join(f.Dir, name)
	if info, err := os.Lstat(path); err != nil || !info.Mode().IsRegular() {
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil
	}
	sum := keep.Sum(data)
	for _, m := range l.Made {
		if m.Sum == sum && m.Name == name {
			from = append(from, m.From)
		}
	}
	return from
}

// inTheWay finds a file that would be replaced and that the program did not make, or made
// from another design of the same title.
func (f Folder) inTheWay(l List, names []string) error {
	for _, name := range names {
		path := filepath.Join(f.Dir, name)
		if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) || f.Replace || name == ListName && l.read {
			continue
		}
		from := f.makers(l, name)
		if slices.ContainsFunc(from, func(one string) bool { return one == "" || f.From == "" || one == f.From }) {
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
func (f Folder) inMemory(outs []job.Output, key string) (set []keep.File, now List, err error) {
	now = List{read: true, whole: true, Key: cmp.Or(key, f.Told.Key), Below: f.Told.Below, Notes: f.Told.Notes}
	for _, o := range outs {
		var all pieces
		if err := o.Write(&all); err != nil {
			return nil, now, fmt.Errorf("cannot make %s: %w", o.Name, err)
		}
		sum := keep.Sum(all...)
		now.Made = append(now.Made, Made{sum, o.Name, f.From})
		set = append(set, keep.File{Path: filepath.Join(f.Dir, o.Name), Write: all.writeTo, Sum: sum})
	}
	return set, now, nil
}

// HasRoom finds out early what would be in the way of files of these names, and of their list.
func (f Folder) HasRoom(names []string) error {
	l, err := f.open()
	if err != nil {
		return err
	}
	return f.inTheWay(l, append(names, ListName))
}

// write puts a set and its list in the place of an older one.
func (f Folder) write(set []keep.File, now, old List) error {
	var gone []string
	for _, m := range old.Made {
		switch {
		case slices.Contains(now.names(), m.Name):
		case f.Shared && !job.OfCourse(m.Name):
			now.Made = append(now.Made, m) // another set's
		case f.owns(old, m.Name):
			gone = append(gone, filepath.Join(f.Dir, m.Name))
		}
	}
	list := keep.File{Path: filepath.Join(f.Dir, ListName), Write: asBytes([]byte(now.text()))}
	return f.keeper().Save(append(set, list), gone...)
}

// Still are the files of a whole course: as they lie in its folder where they were made with
// the same key, else made anew.
func (f Folder) Still(key string, anew func() ([]job.Output, error)) ([]job.Output, error) {
	old, err := f.open()
	if err != nil || key == "" || old.Key != key {
		return anew()
	}
	var out []job.Output
	for _, m := range old.Made {
		if m.Name == job.SummaryName || !job.OfCourse(m.Name) {
			continue
		}
		data, err := os.ReadFile(filepath.Join(f.Dir, m.Name))
		if err != nil || keep.Sum(data) != m.Sum {
			return anew()
		}
		out = append(out, job.Output{Name: m.Name, Says: "of the whole course, as it was", Write: asBytes(data)})
	}
	if len(out) == 0 {
		return anew()
	}
	return out, nil
}
