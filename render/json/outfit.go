package json

import (
	"ribwright/geometry/finding"
)

// notePart is one thing that was found of an outfit.
type notePart struct {
	About    string `json:"about"`
	Text     string `json:"text"`
	Standing string `json:"standing"`
	Danger   bool   `json:"danger"`
}

// rangePart is a figure beside what practice gives for it.
type rangePart struct {
	Name   string      `json:"name"`
	Value  significant `json:"value"`
	Low    significant `json:"low"`
	High   significant `json:"high"`
	Unit   string      `json:"unit"`
	Source string      `json:"source"`
	Inside bool        `json:"inside"`
}

func notesOf(all finding.List) []notePart {
	out := []notePart{}
	for _, n := range all {
		out = append(out, notePart{n.About, n.Text, string(n.Standing), n.Verdict.Danger()})
	}
	return out
}

func rangesOf(all []finding.Range) []rangePart {
	out := []rangePart{}
	for _, r := range all {
		out = append(out, rangePart{r.Name, significant(r.Value), significant(r.Low), significant(r.High), r.Unit, r.Source + " (practice)", r.Inside()})
	}
	return out
}
