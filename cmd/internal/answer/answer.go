// Package answer is the engine behind a message: JSON in, JSON out. A server and a
// browser's worker both hand messages to it, so that a page is told the same by either.
package answer

import (
	"bytes"
	gojson "encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"ribwright/cmd/internal/job"
	"ribwright/geometry/wording"
	"ribwright/render/json"
	"ribwright/render/svg"
)

// Question is one request as a message.
type Question struct {
	Verb   string            `json:"verb"`
	Names  []string          `json:"names"`
	Fields [][2]string       `json:"fields"` // names and values, as a person would type them
	Files  map[string]string `json:"files"`  // by the names that the request and its designs have for them
	Make   bool              `json:"make"`   // the files too
	Only   []string          `json:"only"`   // of those the ones whose names end so; all when left out
	Told   bool              `json:"told"`   // the report too, block by block
}

// Answer is what came of it: numbers, a report and files, or a fault.
type Answer struct {
	Numbers any    `json:"numbers,omitempty"`
	Told    any    `json:"told,omitempty"`
	Files   []File `json:"files,omitempty"`
	Fault   *Fault `json:"fault,omitempty"`
}

// File is a file that was made.
type File struct {
	Name string `json:"name"`
	Says string `json:"says"`
	Data []byte `json:"data"`
}

// Fault says what is wrong, and with which fields.
type Fault struct {
	Says   string   `json:"says"`
	Fields []string `json:"fields,omitempty"`
}

// Largest is the longest message that is read, bytes: a design file may be 1 MB.
const Largest = 2 << 20

// To answers a message, in a world whose files are those of the message. It never panics,
// and what it returns is always an Answer.
func To(message []byte, w job.World) (out []byte) {
	defer func() {
		if r := recover(); r != nil {
			out = written(Answer{Fault: &Fault{Says: fmt.Sprintf("a fault in the program itself (%v); please report it with your design file", r)}})
		}
	}()
	a, err := work(message, w)
	if err != nil {
		a = Answer{Fault: faultOf(err)}
	}
	return written(a)
}

// written never fails but for a number that is none, which no report holds.
func written(a Answer) []byte {
	out, err := a.write()
	if err != nil {
		out, _ = gojson.Marshal(Answer{Fault: &Fault{Says: "a fault in the program itself (" + err.Error() + "); please report it with your design file"}})
	}
	return out
}

// write writes an answer. A report's numbers, which are most of what a page is told, go
// straight into it: Marshal would read them over again.
func (a Answer) write() ([]byte, error) {
	numbers, ok := a.Numbers.(json.Object)
	if !ok {
		return gojson.Marshal(a)
	}
	a.Numbers = nil
	rest, err := gojson.Marshal(a)
	if err != nil {
		return nil, err
	}
	out := bytes.NewBuffer(make([]byte, 0, 1<<16))
	out.WriteString(`{"numbers":`)
	if err := numbers.Write(out); err != nil {
		return nil, err
	}
	if len(rest) > len("{}") {
		out.WriteByte(',')
	}
	out.Write(rest[1:])
	return out.Bytes(), nil
}

func faultOf(err error) *Fault {
	var m *job.Misuse
	if errors.As(err, &m) {
		return &Fault{wording.OneLine(m.Err.Error()), m.Fields}
	}
	return &Fault{Says: wording.OneLine(err.Error())}
}

func work(message []byte, w job.World) (Answer, error) {
	var q Question
	if len(message) > Largest {
		return Answer{}, fmt.Errorf("the message is larger than %d MB, so it is no request", Largest>>20)
	}
	if err := gojson.Unmarshal(message, &q); err != nil {
		return Answer{}, errors.New("the message is no request: " + err.Error())
	}
	r, err := job.Ask(q.Verb, q.Names, q.Fields...)
	if err != nil {
		return Answer{}, err
	}
	w.Files = q.file
	result, err := r.Do(w)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Numbers: result.Numbers}
	if q.Told {
		if a.Told, err = json.Blocks(result.Report.Blocks, svg.EncodeInline); err != nil {
			return a, err
		}
	}
	if q.Make {
		a.Files, err = q.make(result.Outputs)
	}
	return a, err
}

func (q Question) file(name string) ([]byte, error) {
	text, ok := q.Files[name]
	if !ok {
		return nil, fs.ErrNotExist
	}
	return []byte(text), nil
}

// make writes the files that are wanted.
func (q Question) make(all []job.Output) ([]File, error) {
	var out []File
	for _, o := range all {
		wanted := len(q.Only) == 0 || slices.ContainsFunc(q.Only, func(end string) bool { return strings.HasSuffix(o.Name, end) })
		if !wanted {
			continue
		}
		var b bytes.Buffer
		if err := o.Write(&b); err != nil {
			return nil, err
		}
		out = append(out, File{o.Name, o.Says, b.Bytes()})
	}
	return out, nil
}
