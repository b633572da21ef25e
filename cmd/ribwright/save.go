package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// output is one file to write.
type output struct {
	name  string
	write func(io.Writer) error
}

// save writes all the files into a folder, or none: each is written under
// another name beside its place, and only when all are whole do they take their
// places. A file that was there stays until then. through, when given, stands
// between the program and each file; tests use it to fill the disk.
func save(dir string, outs []output, through func(io.Writer) io.Writer) (err error) {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("cannot make the folder %q: %w", dir, cause(err))
	}
	var drafts []string
	defer func() {
		for _, d := range drafts {
			os.Remove(d) // gone already when all went well
		}
	}()
	for _, o := range outs {
		draft, err := writeDraft(dir, o, through)
		if draft != "" {
			drafts = append(drafts, draft)
		}
		if err != nil {
			return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, o.name), cause(err))
		}
	}
	for i, o := range outs {
		if err := os.Rename(drafts[i], filepath.Join(dir, o.name)); err != nil {
			return fmt.Errorf("cannot put %s in place: %w", filepath.Join(dir, o.name), cause(err))
		}
	}
	return nil
}

// writeDraft writes one file under a passing name and returns that name.
func writeDraft(dir string, o output, through func(io.Writer) io.Writer) (string, error) {
	file, err := os.CreateTemp(dir, "."+o.name+"-*.draft")
	if err != nil {
		return "", err
	}
	var w io.Writer = file
	if through != nil {
		w = through(w)
	}
	buffer := bufio.NewWriter(w)
	err = errors.Join(o.write(buffer), buffer.Flush(), file.Chmod(0o644), file.Close())
	return file.Name(), err
}

// cause strips the system call and the passing file name from an error.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
