package folder

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// Added is a set of files with the lists of the folders that they go to: each list tells of
// them besides what it told of before. So a card that was filled in, or a design that was
// changed by hand, is not written over, nor one design's files by another's of the same
// title. boat is the design that the files are made from, "" for none.
//
// Errors: a file in the way that the program did not make, or that was changed since, or was
// made from another design, or is the design of a boat of another title, unless replace says
// that it may go; a file that cannot be made.
func Added(outs []keep.File, boat string, replace bool) ([]keep.File, error) {
	var set, lists []keep.File
	for len(outs) > 0 {
		f := Folder{Dir: filepath.Dir(outs[0].Path), Shared: true, Replace: replace}
		f.From = wayTo(boat, f.Dir)
		elsewhere := func(o keep.File) bool { return filepath.Dir(o.Path) != f.Dir }
		here := slices.DeleteFunc(slices.Clone(outs), elsewhere)
		outs = slices.DeleteFunc(slices.Clone(outs), func(o keep.File) bool { return !elsewhere(o) })
		ready, list, err := f.beside(here)
		if err != nil {
			return nil, err
		}
		set, lists = append(set, ready...), append(lists, list)
	}
	return append(set, lists...), nil
}

// wayTo is a design as a folder's list names it: a shipped one by its name, a file by the way
// to it from the folder, which stays true when both are moved.
func wayTo(boat, dir string) string {
	if boat == "" || slices.Contains(design.ShippedNames(), boat) {
		return boat
	}
	way := boat
	file, err := filepath.Abs(boat)
	from, fault := filepath.Abs(dir)
	if rel, none := filepath.Rel(from, file); err == nil && fault == nil && none == nil {
		way = rel
	}
	return wording.Flat(filepath.ToSlash(way))
}

// beside makes files for the folder in memory, and its list with them. What stands there as
// it would be made now is in nobody's way.
func (f Folder) beside(outs []keep.File) (set []keep.File, told keep.File, err error) {
	if err := f.keeper().Heal(f.Dir); err != nil {
		return nil, told, err
	}
	var here []job.Output
	for _, o := range outs {
		here = append(here, job.Output{Name: filepath.Base(o.Path), Write: o.Write})
	}
	set, now, err := f.inMemory(here, "")
	if err != nil {
		return nil, told, err
	}
	l := Listed(f.Dir)
	plain := slices.DeleteFunc(append(now.names(), ListName), func(name string) bool { return !isPlain(filepath.Join(f.Dir, name)) })
	ours := List{read: l.read, Made: slices.Concat(l.Made, now.Made)}
	if err = f.inTheWay(ours, plain); err == nil && !f.Replace {
		err = otherBoat(set)
	}
	l.Made = append(slices.DeleteFunc(l.Made, func(m Made) bool { return slices.Contains(now.names(), m.Name) }), now.Made...)
	return set, keep.File{Path: filepath.Join(f.Dir, ListName), Write: asBytes([]byte(l.text()))}, err
}

// otherBoat finds a design in the way that is a boat of another title.
func otherBoat(set []keep.File) error {
	for _, f := range set {
		if filepath.Ext(f.Path) != ".toml" || !isPlain(f.Path) {
			continue
		}
		old, err := keep.ReadFile(f.Path)
		var now bytes.Buffer
		if err != nil || f.Write(&now) != nil {
			continue // told when the set is put in place
		}
		if was, is := titleOf(old), titleOf(now.Bytes()); was != "" && was != is {
			return fmt.Errorf("%s is the design of another boat, %q, and this one is %q; give this one another file with --output, or write over it with --replace", f.Path, was, is)
		}
	}
	return nil
}

// titleOf is the title of a design; "" for what is none.
func titleOf(file []byte) string {
	d, err := design.Decode(bytes.NewReader(file), "")
	if err != nil {
		return ""
	}
	return d.Title
}

// asBytes writes bytes that are made.
func asBytes(b []byte) func(io.Writer) error {
	return func(w io.Writer) error { _, err := w.Write(b); return err }
}

// isPlain reports whether a plain file stands there; what else may be in the way is told
// when the set is put in place.
func isPlain(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.Mode().IsRegular()
}
