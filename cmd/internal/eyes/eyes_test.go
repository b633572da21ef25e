package eyes

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"

	"ribwright/cmd/internal/job"
)

// viewer starts the renderer once for all tests; it ends with them.
var viewer = sync.OnceValues(NewViewer)

func eyesOf(t *testing.T) *Viewer {
	t.Helper()
	v, err := viewer()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// long says whether there is time for all papers and boats, as in CI; else one of each
// kind is looked at.
var long = os.Getenv("RIBWRIGHT_LONG") != ""

// oneOf is the first of several when there is no time for all.
func oneOf(all ...string) []string {
	if long {
		return all
	}
	return all[:1]
}

// ask does a job and returns its files by the ends of their names.
func ask(t *testing.T, verb, design string, flags ...string) func(end string) []byte {
	t.Helper()
	once, _ := answers.LoadOrStore(fmt.Sprint(verb, design, flags), sync.OnceValue(func() *answer {
		return answered(t, job.World{Made: job.UsualDate()}, verb, design, flags...)
	}))
	a := once.(func() *answer)()
	return func(end string) []byte { return a.file(t, end) }
}

// askOf does so with files of the world's own.
func askOf(t *testing.T, world job.World, verb, design string, flags ...string) func(end string) []byte {
	t.Helper()
	a := answered(t, world, verb, design, flags...)
	return func(end string) []byte { return a.file(t, end) }
}

// answered does a job.
func answered(t *testing.T, world job.World, verb, design string, flags ...string) *answer {
	t.Helper()
	var fields [][2]string
	for len(flags) > 0 {
		name := strings.TrimPrefix(flags[0], "--")
		if name == "loft" || name == "full-size" {
			fields, flags = append(fields, [2]string{name, "true"}), flags[1:]
			continue
		}
		fields, flags = append(fields, [2]string{name, flags[1]}), flags[2:]
	}
	r, err := job.Ask(verb, []string{design}, fields...)
	if err != nil {
		t.Fatal(err)
	}
	result, err := r.Do(world)
	if err != nil {
		t.Fatal(err)
	}
	return &answer{result: result, made: map[string][]byte{}}
}

// answers holds what came of each job that a test has asked for, for all that ask the same.
var answers sync.Map

type answer struct {
	lock   sync.Mutex
	result *job.Result
	made   map[string][]byte // by the file's name
}

// file makes the file whose name ends so, once.
func (a *answer) file(t *testing.T, end string) []byte {
	a.lock.Lock()
	defer a.lock.Unlock()
	for _, o := range a.result.Outputs {
		if !strings.HasSuffix(o.Name, end) {
			continue
		}
		if a.made[o.Name] == nil {
			var b bytes.Buffer
			if err := o.Write(&b); err != nil {
				t.Fatal(err)
			}
			a.made[o.Name] = b.Bytes()
		}
		return a.made[o.Name]
	}
	t.Fatalf("no file was made that ends in %s", end)
	return nil
}

// set is one lofting read back.
type set struct {
	*Sheets
	numbers *Numbers
}

// loft lofts a design for a paper and reads the sheets. How parts are nested for a
// cutter is nowhere on them, so that is done the quick way.
func loft(t *testing.T, design, paper string, flags ...string) set {
	t.Helper()
	read := ask(t, "loft", design, append([]string{"--paper", paper, "--nest", "quick"}, flags...)...)
	n, err := ReadNumbers(read("-numbers.json"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := Read(eyesOf(t), read(".pdf"), n.Pages)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.File.Close() })
	return set{s, n}
}

// whole draws a pattern in one piece.
func whole(t *testing.T, design, pattern string) *Sheets {
	t.Helper()
	s, err := Whole(eyesOf(t), design, pattern)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.File.Close() })
	return s
}
