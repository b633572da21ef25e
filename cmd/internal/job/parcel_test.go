package job

import (
	"archive/zip"
	"bytes"
	"io"
	"testing"
)

// madeBy are the files of a verb by their names, as the command line makes them.
func madeBy(t *testing.T, verb string, names []string, fields ...[2]string) map[string][]byte {
	t.Helper()
	r, err := Ask(verb, names, fields...)
	if err != nil {
		t.Fatal(err)
	}
	result, err := r.Do(World{Made: UsualDate()})
	if err != nil {
		t.Fatal(err)
	}
	out := map[string][]byte{}
	for _, o := range result.Outputs {
		var b bytes.Buffer
		if err := o.Write(&b); err != nil {
			t.Fatal(err)
		}
		out[o.Name] = b.Bytes()
	}
	return out
}

// TestParcel: what lies in the parcel are the bytes of the verbs that make each alone.
func TestParcel(t *testing.T) {
	names, usual := []string{"brook"}, [][2]string{{"paper", "a4"}, {"margins", "laser"}, {"printed-down", "201 mm of 200 mm"}}
	whole := madeBy(t, "parcel", names, append(usual, [2]string{"nest", "quick"}, [2]string{"skill", "beginner"})...)["brook.zip"]
	z, err := zip.NewReader(bytes.NewReader(whole), int64(len(whole)))
	if err != nil {
		t.Fatal(err)
	}
	want := madeBy(t, "loft", names, append(usual, [2]string{"nest", "quick"})...)
	for name, data := range madeBy(t, "book", names, usual[0], usual[1], [2]string{"skill", "beginner"}) {
		want[name] = data
	}
	for name, data := range madeBy(t, "proof", nil, usual...) {
		want[name] = data
	}
	want["brook.toml"] = madeBy(t, "look", names)["brook.toml"]
	if len(z.File) != len(want) {
		t.Errorf("%d files in the parcel, want %d", len(z.File), len(want))
	}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		got, err := io.ReadAll(r)
		if err != nil || !bytes.Equal(got, want[f.Name]) {
			t.Errorf("%s: %v, or other bytes than its own verb makes", f.Name, err)
		}
		if !f.Modified.Equal(UsualDate()) {
			t.Errorf("%s is of %v", f.Name, f.Modified)
		}
	}
}
