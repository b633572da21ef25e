package page

import (
	"encoding/json"
	"errors"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
	"ribwright/geometry/design"
)

// Begin readies what the page shows first: a shipped design, or a file with its text. No
// name is the first that comes with the program.
//
// Errors: a design that cannot be drawn.
func Begin(name string, text []byte) (Start, error) {
	if name == "" {
		name = design.ShippedNames()[0]
	}
	s := Start{Name: name, Text: string(text)}
	q := answer.Question{Verb: "look", Names: []string{name}, Fields: [][2]string{{"whole", "true"}}}
	if text != nil {
		q.Files = map[string]string{name: s.Text}
	}
	message, err := json.Marshal(q)
	if err != nil {
		return s, err
	}
	s.First = answer.To(message, job.World{Made: job.UsualDate()})
	var a answer.Answer
	if err := json.Unmarshal(s.First, &a); err != nil {
		return s, err
	}
	if a.Fault != nil {
		return s, errors.New(a.Fault.Says)
	}
	return s, nil
}
