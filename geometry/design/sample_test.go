package design

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
)

// TestSamplesPaste writes a design that has none of the tables that have samples. Each
// sample, its marks taken away where it stands, gives a design with that one row; left
// alone, the file reads back as it was.
func TestSamplesPaste(t *testing.T) {
	d, err := Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	d.Woods, d.Stock.Boards, d.Crew, d.Gear, d.Thwarts = nil, nil, nil, nil, nil
	var b bytes.Buffer
	if err := EncodeNoted(&b, d, nil, nil); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	if got := mustDecode(t, text); !reflect.DeepEqual(got, d) {
		t.Errorf("got  %+v\nwant %+v", got, d)
	}
	counts := func(d *Design) map[string]int {
		return map[string]int{"wood": len(d.Woods), "stock.board": len(d.Stock.Boards), "crew": len(d.Crew), "gear": len(d.Gear), "thwart": len(d.Thwarts)}
	}
	for table := range samples() {
		head := "# [[" + table + "]]\n"
		from := strings.Index(text, head)
		if from < 0 || strings.Contains(text, table+" = []") {
			t.Errorf("%s: no sample in\n%s", table, text)
			continue
		}
		lines := strings.Split(text[from:], "\n")
		for i := 0; strings.HasPrefix(lines[i], "# "); i++ {
			lines[i] = strings.TrimPrefix(lines[i], "# ")
		}
		pasted := mustDecode(t, text[:from]+strings.Join(lines, "\n"))
		for name, n := range counts(pasted) {
			if want := map[bool]int{true: 1}[name == table]; n != want {
				t.Errorf("the sample of %s pasted: %d of %s, want %d", table, n, name, want)
			}
		}
	}
}
