package job

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"ribwright/render/json"
	"ribwright/render/text"
)

// made is what came of a job.
type made struct {
	*Result
	files map[string][]byte
	said  string // to people, with the names of the files
}

// asked makes a request of a verb's name, of names, and of fields as "--name", "value"
// or "--name" for a yes.
func asked(t testing.TB, verb string, args ...string) Request {
	t.Helper()
	plain, err := Ask(verb, nil)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	var fields [][2]string
	for len(args) > 0 {
		name, isField := strings.CutPrefix(args[0], "--")
		args = args[1:]
		switch {
		case !isField:
			names = append(names, name)
		case strings.Contains(name, "="):
			field, value, _ := strings.Cut(name, "=")
			fields = append(fields, [2]string{field, value})
		case slices.ContainsFunc(plain.Fields(), func(f Field) bool { return f.Name == name && f.Takes == "" }):
			fields = append(fields, [2]string{name, "true"})
		default:
			fields, args = append(fields, [2]string{name, args[0]}), args[1:]
		}
	}
	r, err := Ask(verb, names, fields...)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// world has no files, and a fixed date.
func world() World { return World{Made: time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)} }

// answers holds what came of each request, so that tests that ask for the same share it.
var answers sync.Map

// shared works something out once for all tests that ask for it by the same name.
func shared[T any](t testing.TB, name string, work func() (T, error)) T {
	t.Helper()
	once, _ := answers.LoadOrStore(name, sync.OnceValues(work))
	out, err := once.(func() (T, error))()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// ask does a job from nothing but its words; nobody may change what came of it.
func ask(t testing.TB, verb string, args ...string) made {
	t.Helper()
	r := asked(t, verb, args...)
	if l, is := r.(*Loft); is {
		return l.shared(t).made
	}
	return shared(t, fmt.Sprintf("%#v", r), func() (made, error) { return answered(r.Do(world())) })
}

// lofting is a boat laid out, and the files of it.
type lofting struct {
	lofted
	made
}

// known are the facts of a shipped design, worked out once for all tests.
func known(t testing.TB, name string) *facts {
	t.Helper()
	return shared(t, "facts of "+name, func() (*facts, error) { return world().factsOf(name) })
}

// shared lofts once for all tests.
func (l *Loft) shared(t testing.TB) lofting {
	t.Helper()
	k := known(t, l.Design)
	return shared(t, fmt.Sprintf("%#v", l), func() (out lofting, err error) {
		if out.lofted, err = l.lay(k, world()); err == nil {
			out.made, err = answered(l.deliver(k, world(), out.lofted))
		}
		return out, err
	})
}

// do does a job anew.
func do(t testing.TB, r Request, w World) made {
	t.Helper()
	out, err := answered(r.Do(w))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// answered writes the files of a result.
func answered(result *Result, err error) (made, error) {
	if err != nil {
		return made{}, err
	}
	out := made{Result: result, files: map[string][]byte{}}
	var said bytes.Buffer
	if err := text.Encode(&said, result.Report); err != nil {
		return out, err
	}
	for _, o := range result.Outputs {
		var b bytes.Buffer
		if err := o.Write(&b); err != nil {
			return out, fmt.Errorf("%s: %w", o.Name, err)
		}
		if out.files[o.Name] != nil {
			return out, fmt.Errorf("two files are called %s", o.Name)
		}
		out.files[o.Name] = b.Bytes()
		fmt.Fprintf(&said, "%s\n  %s\n", o.Name, o.Says)
	}
	out.said = said.String()
	return out, nil
}

// only is the one file whose name ends so.
func (m made) only(t testing.TB, end string) []byte {
	t.Helper()
	var found []byte
	for name, data := range m.files {
		if strings.HasSuffix(name, end) {
			if found != nil {
				t.Fatalf("two files end in %s", end)
			}
			found = data
		}
	}
	if found == nil {
		t.Fatalf("no file ends in %s", end)
	}
	return found
}

// numbers are what programs read.
func (m made) numbers(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := json.Encode(&b, m.Numbers); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
