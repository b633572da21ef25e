package job

import (
	"bytes"
	"testing"

	"ribwright/render/json"
)

// numbersOf writes a result's numbers, which a page is told.
func numbersOf(t *testing.T, m made) string {
	t.Helper()
	var b bytes.Buffer
	all, ok := m.Numbers.(json.Object)
	if !ok && m.Numbers != nil {
		t.Fatalf("numbers are a %T", m.Numbers)
	}
	if err := all.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestKept: whatever was asked of a boat before, and of another between, an answer from kept
// facts is the one from nothing, byte for byte; and facts of the same design are kept.
func TestKept(t *testing.T) {
	w := world()
	w.Kept = new(Kept)
	questions := [][]string{
		{"sheets", "lake"}, {"look", "lake", "--whole", "true"}, {"sheets", "lake", "--paper", "a4"}, {"float", "lake"}, {"bend", "lake"},
		{"sheets", "lake", "--units", "imperial"}, {"look", "lake", "--hull-beam", "780 mm"}, {"book", "lake"}, {"sheets", "brook"}, {"look", "lake"},
		{"loft", "lake", "--nest", "quick"}, {"book", "lake", "--units", "imperial"}, {"bend", "lake", "--units", "imperial"}, {"sheets", "lake"},
		{"float", "river"}, {"book", "river"}, {"sheets", "river"}, {"bend", "river"}, {"look", "river", "--whole", "true"},
	}
	for _, q := range questions {
		got, want := do(t, asked(t, q[0], q[1:]...), w), do(t, asked(t, q[0], q[1:]...), world())
		if got.said != want.said || numbersOf(t, got) != numbersOf(t, want) {
			t.Errorf("%q is told otherwise after other questions", q)
		}
		if len(got.files) != len(want.files) {
			t.Errorf("%q makes %d files, from nothing %d", q, len(got.files), len(want.files))
		}
		for name, data := range want.files {
			if !bytes.Equal(got.files[name], data) {
				t.Errorf("%q: %s is another after other questions", q, name)
			}
		}
	}
	first, err := w.factsOf("lake")
	if err != nil {
		t.Fatal(err)
	}
	if again, _ := w.factsOf("lake"); again != first {
		t.Error("the facts of one design are worked out twice")
	}
	if other, _ := w.factsOf("brook"); other == first || other.design.Title == first.design.Title {
		t.Error("another boat has the facts of the one before it")
	}
}
