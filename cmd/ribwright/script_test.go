package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"ribwright/render/rendertest"
)

// paperLines are what is said before anything is written.
var paperLines = regexp.MustCompile(`^\d+ sheets? of .*\n  the patterns alone would fill .*\n(  some of these margins .*\n)?`)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ribwright": main})
}

// TestScripts runs the program as a builder does, one script for each thing it
// must do.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "holds": holds, "edit": edit, "crlf": crlf, "wellformed": wellformed,
		},
		Condition: func(name string) (bool, error) {
			if name == "root" {
				return os.Geteuid() == 0, nil
			}
			return false, fmt.Errorf("no condition %q", name)
		},
	})
}

// exits N ribwright ARGS... runs the program and requires that very exit code.
// After a failure there must be one line on stderr, told by ribwright, and
// nothing on stdout; after success nothing on stderr.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits N ribwright ARGS...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
	stdout, stderr := ts.ReadFile("stdout"), ts.ReadFile("stderr")
	if want == done {
		if stderr != "" {
			ts.Fatalf("on stderr stands %q, want nothing", stderr)
		}
		return
	}
	line, ended := strings.CutSuffix(stderr, "\n")
	// How much paper it takes is said before anything is written.
	if want == failed {
		stdout = paperLines.ReplaceAllString(stdout, "")
	}
	if stdout != "" || !ended || strings.ContainsAny(line, "\r\n") || !strings.HasPrefix(line, "ribwright: ") {
		ts.Fatalf("stdout %q and stderr %q, want nothing and one line of ribwright's", stdout, stderr)
	}
}

// holds DIR FILE... requires that a folder holds these files and nothing else.
func holds(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: holds DIR FILE...")
	}
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	want := slices.Sorted(slices.Values(args[1:]))
	if !slices.Equal(got, want) {
		ts.Fatalf("%s holds %q, want %q", args[0], got, want)
	}
}

// edit NAME FILE OLD NEW... writes a shipped design into a file with each OLD,
// which must stand there once, replaced by its NEW.
func edit(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 || len(args)%2 != 0 {
		ts.Fatalf("usage: edit NAME FILE OLD NEW...")
	}
	data, err := os.ReadFile(filepath.Join("..", "..", "geometry", "design", "shipped", args[0]+".toml"))
	ts.Check(err)
	text := string(data)
	for pair := range slices.Chunk(args[2:], 2) {
		if n := strings.Count(text, pair[0]); n != 1 {
			ts.Fatalf("%q stands %d times in %s, want once", pair[0], n, args[0])
		}
		text = strings.Replace(text, pair[0], pair[1], 1)
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(text), 0o666))
}

// crlf FILE gives a file the line ends and the byte order mark that editors on
// some systems give it.
func crlf(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: crlf FILE")
	}
	text := strings.ReplaceAll(ts.ReadFile(args[0]), "\n", "\r\n")
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte("\uFEFF"+text), 0o666))
}

// wellformed FILE... requires what other programs need to open a file.
func wellformed(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: wellformed FILE...")
	}
	for _, name := range args {
		if err := rendertest.WellFormed(name, []byte(ts.ReadFile(name))); err != nil {
			ts.Fatalf("%s: %v", name, err)
		}
	}
}
