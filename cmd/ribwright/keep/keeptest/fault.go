// Package keeptest has a disk that fails where a test wants it to.
package keeptest

import (
	"cmp"
	"errors"
	"io/fs"

	"ribwright/cmd/ribwright/keep"
)

// Fault is a disk whose n-th operation fails, and with forever every one after it too, as
// if the program had been killed there.
type Fault struct {
	keep.Here
	N       int
	Forever bool
	count   int
	Hit     string // the operation that failed
}

// Err is what it says.
var Err = errors.New("the disk\nhas a fault")

func (f *Fault) fails(what string) bool {
	f.count++
	if f.count == f.N || f.Forever && f.count > f.N {
		f.Hit = cmp.Or(f.Hit, what)
		return true
	}
	return false
}

// MakeFolder fails or does its work.
func (f *Fault) MakeFolder(path string) error {
	if f.fails("make folder") {
		return Err
	}
	return f.Here.MakeFolder(path)
}

// Look fails or does its work.
func (f *Fault) Look(path string) (fs.FileInfo, error) {
	if f.fails("look") {
		return nil, Err
	}
	return f.Here.Look(path)
}

// List fails or does its work.
func (f *Fault) List(folder string) ([]fs.DirEntry, error) {
	if f.fails("list") {
		return nil, Err
	}
	return f.Here.List(folder)
}

// Read fails or does its work.
func (f *Fault) Read(path string) ([]byte, error) {
	if f.fails("read") {
		return nil, Err
	}
	return f.Here.Read(path)
}

// Create fails or does its work.
func (f *Fault) Create(path string) (keep.Draft, error) {
	if f.fails("create") {
		return nil, Err
	}
	d, err := f.Here.Create(path)
	return &faultyDraft{d, f}, err
}

// Rename fails or does its work.
func (f *Fault) Rename(from, to string) error {
	if f.fails("rename") {
		return Err
	}
	return f.Here.Rename(from, to)
}

// Link fails or does its work.
func (f *Fault) Link(from, to string) error {
	if f.fails("link") {
		return Err
	}
	return f.Here.Link(from, to)
}

// Remove fails or does its work.
func (f *Fault) Remove(path string) error {
	if f.fails("remove") {
		return Err
	}
	return f.Here.Remove(path)
}

// SyncFolder fails or does its work.
func (f *Fault) SyncFolder(path string) error {
	if f.fails("sync folder") {
		return Err
	}
	return nil // a test's folder need not outlive a loss of power
}

type faultyDraft struct {
	keep.Draft
	f *Fault
}

// Write puts half of what it is given on a disk that fails.
func (d *faultyDraft) Write(p []byte) (int, error) {
	if d.f.fails("write") {
		n, _ := d.Draft.Write(p[:len(p)/2])
		return n, Err
	}
	return d.Draft.Write(p)
}

func (d *faultyDraft) Sync() error {
	if d.f.fails("sync") {
		return Err
	}
	return nil
}

func (d *faultyDraft) Chmod(m fs.FileMode) error {
	if d.f.fails("chmod") {
		return Err
	}
	return d.Draft.Chmod(m)
}

func (d *faultyDraft) Close() error {
	err := d.Draft.Close()
	if d.f.fails("close") {
		return Err
	}
	return err
}
