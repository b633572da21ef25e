package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"syscall"
	"testing"

	"github.com/spf13/pflag"

	"ribwright/cmd/ribwright/keep"
)

// verbFor makes a verb of a function.
func verbFor(name string, do func(args []string, c console) error) verb {
	return verb{name: name, line: "for a test", run: do}
}

// broken are ways in which a verb can break down.
func broken() program {
	return program{
		verbFor("panic", func([]string, console) error { panic("no such thing\nas a plank") }),
		verbFor("index", func(args []string, _ console) error { return errors.New(args[len(args)]) }),
		verbFor("nil", func([]string, console) error { var v *verb; return errors.New(v.name) }),
		verbFor("error", func([]string, console) error { panic(fmt.Errorf("wrapped\r\n\x1b[31m: %w", io.EOF)) }),
		verbFor("half", func(_ []string, c console) error { fmt.Fprintln(c.out, "half an answer"); panic("then this") }),
		verbFor("fails", func([]string, console) error { return errors.New("cannot plane:\n\tthe iron\x07 is blunt") }),
		verbFor("misused", func([]string, console) error { return fmt.Errorf("misused: %w", usageError{errors.New("no edge")}) }),
		verbFor("helps", func([]string, console) error { return fmt.Errorf("asked: %w", pflag.ErrHelp) }),
		verbFor("works", func(args []string, c console) error { _, err := fmt.Fprint(c.out, args); return err }),
	}
}

func TestRun(t *testing.T) {
	const begin, end = "ribwright: a fault in the program itself (", "); please report it with your design file\n"
	for _, c := range []struct {
		args      string
		code      int
		out, errs string
	}{
		{"panic", failed, "", begin + "no such thing as a plank" + end},
		{"index", failed, "", begin + "runtime error: index out of range [0] with length 0" + end},
		{"nil", failed, "", begin + "runtime error: invalid memory address or nil pointer dereference" + end},
		{"error", failed, "", begin + "wrapped [31m: EOF" + end},
		{"half", failed, "half an answer\n", begin + "then this" + end},
		{"help nil", failed, "", begin + "runtime error: invalid memory address or nil pointer dereference" + end},
		{"fails", failed, "", "ribwright: cannot plane: the iron is blunt\n"},
		{"misused", misuse, "", "ribwright: misused: no edge\n"},
		{"helps", done, "", ""},
		{"works a b", done, "[a b]", ""},
		{"nothing", misuse, "", "ribwright: no verb \"nothing\"; there are: panic, index, nil, error, half, fails, misused, helps, works (try 'ribwright help')\n"},
	} {
		t.Run(c.args, func(t *testing.T) {
			var out, errs bytes.Buffer
			code := broken().run(strings.Fields(c.args), &out, &errs)
			if code != c.code || out.String() != c.out || errs.String() != c.errs {
				t.Errorf("exit %d, stdout %q, stderr %q\nwant %d, %q, %q", code, out.String(), errs.String(), c.code, c.out, c.errs)
			}
		})
	}
}

// shut is a writer whose reader is gone.
type shut struct{ err error }

func (s shut) Write([]byte) (int, error) { return 0, s.err }

// TestRunShut has nobody listening to the answer, or to the messages.
func TestRunShut(t *testing.T) {
	pipe := &fs.PathError{Op: "write", Path: "/dev/stdout", Err: syscall.EPIPE}
	for _, args := range []string{"help", "help loft", "help design", "help species", "--version", "loft --help"} {
		var errs bytes.Buffer
		code := run(strings.Fields(args), shut{pipe}, &errs)
		want := "ribwright: cannot write to standard output: " + syscall.EPIPE.Error() + "\n"
		if code != failed || errs.String() != want {
			t.Errorf("%s: exit %d, stderr %q, want %d, %q", args, code, errs.String(), failed, want)
		}
	}
	for _, args := range []string{"", "panic", "fails", "misused"} {
		if code := broken().run(strings.Fields(args), shut{pipe}, shut{pipe}); code == done {
			t.Errorf("%s with stderr shut: exit %d, want a failure", args, code)
		}
	}
}

// TestRunClosedPipe writes into a real pipe that nobody reads.
func TestRunClosedPipe(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
	defer w.Close()
	var errs bytes.Buffer
	if code := run([]string{"help", "design"}, w, &errs); code != failed || strings.Count(errs.String(), "\n") != 1 {
		t.Errorf("exit %d, stderr %q, want %d and one line", code, errs.String(), failed)
	}
}

func TestCause(t *testing.T) {
	for _, c := range []struct {
		name string
		err  error
		want string
	}{
		{"path", fmt.Errorf("x: %w", &fs.PathError{Op: "open", Path: "/secret/draft", Err: syscall.ENOSPC}), syscall.ENOSPC.Error()},
		{"link", &os.LinkError{Op: "rename", Old: "/secret/draft", New: "b", Err: syscall.EACCES}, syscall.EACCES.Error()},
		{"folder for a file", &fs.PathError{Op: "read", Path: "b", Err: syscall.EISDIR}, "it is a folder, not a file"},
		{"file for a folder", &fs.PathError{Op: "mkdir", Path: "b", Err: syscall.ENOTDIR}, "a file is in the way, where a folder should be"},
		{"other", errors.New("blunt"), "blunt"},
	} {
		if got := keep.Cause(c.err).Error(); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}
