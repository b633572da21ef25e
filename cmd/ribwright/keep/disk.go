package keep

import (
	"io"
	"io/fs"
	"os"
)

// Disk is all that saving asks of the place where files lie. A test puts one between that
// fails.
type Disk interface {
	MakeFolder(path string) error
	Look(path string) (fs.FileInfo, error) // of a link itself
	List(folder string) ([]fs.DirEntry, error)
	Read(path string) ([]byte, error)
	Create(path string) (Draft, error) // fails where something is
	Rename(from, to string) error
	Link(from, to string) error
	Remove(path string) error
	SyncFolder(path string) error
}

// Draft is a file that is being written.
type Draft interface {
	io.WriteCloser
	Sync() error
	Chmod(fs.FileMode) error
}

// Here is the disk of this machine.
type Here struct{}

// MakeFolder makes a folder and those that it lies in.
func (Here) MakeFolder(path string) error { return os.MkdirAll(path, 0o777) }

// Look tells what lies there, not following a link.
func (Here) Look(path string) (fs.FileInfo, error) { return os.Lstat(path) }

// List tells what a folder holds.
func (Here) List(folder string) ([]fs.DirEntry, error) { return os.ReadDir(folder) }

// Read returns a file's bytes.
func (Here) Read(path string) ([]byte, error) { return os.ReadFile(path) }

// Create begins a file as the user's own settings have it.
func (Here) Create(path string) (Draft, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
}

// Rename gives a file another name in one step, in the place of what has it.
func (Here) Rename(from, to string) error { return os.Rename(from, to) }

// Link gives a file a second name.
func (Here) Link(from, to string) error { return os.Link(from, to) }

// Remove takes a name away.
func (Here) Remove(path string) error { return os.Remove(path) }

// SyncFolder has the names in a folder written down, where the system can.
func (Here) SyncFolder(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}
