package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// file is one file to write.
type file struct {
	path  string
	says  string // what it is, "" for nothing
	write func(io.Writer) error
}

// save writes all the files, or none: each is written under another name beside
// its place, and only when all are whole do they take their places. A file that was
// there stays until then. through, when given, stands between the program and each
// file; tests use it to fill the disk.
func save(outs []file, through func(io.Writer) io.Writer) error {
	for _, o := range outs {
		dir := filepath.Dir(o.path)
		if err := os.MkdirAll(dir, 0o777); err != nil {
			return fmt.Errorf("cannot make the folder %q: %w", dir, cause(err))
		}
		// Found out now, and not when the first files have taken their places.
		if info, err := os.Stat(o.path); err == nil && info.IsDir() {
			return fmt.Errorf("cannot write %s: a folder of that name is in the way", o.path)
		}
	}
	drafts := make([]string, 0, len(outs))
	defer func() {
		for _, d := range drafts {
			os.Remove(d) // gone already when all went well
		}
	}()
	for _, o := range outs {
		file, err := os.CreateTemp(filepath.Dir(o.path), "."+filepath.Base(o.path)+"-*.draft")
		if err == nil {
			drafts = append(drafts, file.Name())
			err = fill(file, o, through)
		}
		if err != nil {
			return fmt.Errorf("cannot write %s: %w", o.path, cause(err))
		}
	}
	for i, o := range outs {
		if err := os.Rename(drafts[i], o.path); err != nil {
			return fmt.Errorf("cannot put %s in place: %w", o.path, cause(err))
		}
	}
	return nil
}

// fill writes one output into its draft and closes it, whatever happens.
func fill(file *os.File, o file, through func(io.Writer) io.Writer) (err error) {
	defer func() {
		// A disk may only now say that it is full; but the first word counts.
		if closing := file.Close(); err == nil {
			err = closing
		}
	}()
	var w io.Writer = file
	if through != nil {
		w = through(w)
	}
	buffer := bufio.NewWriter(w)
	if err := o.write(buffer); err != nil {
		return err
	}
	if err := buffer.Flush(); err != nil {
		return err
	}
	return file.Chmod(0o644) // a draft is made for its owner alone
}

// mostRead is how much of a file is read, bytes: more than the largest that any
// reader takes, so that each can refuse a wrong file by itself.
const mostRead = 4<<20 + 1

// readFile gives the engine a file by its path.
func readFile(name string) ([]byte, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, cause(err)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, mostRead))
	return data, cause(err)
}

// cause strips the system call and the passing file name from an error, and
// puts what a builder may meet in plain words.
func cause(err error) error {
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
