package report

import (
	"reflect"
	"testing"
)

// TestOutward: rows stand from midship outward, the after one first; only a rib and its
// mirror share a row, and only with the same figures. A boat without a rib at midship, or
// with more ribs at one end, loses none.
func TestOutward(t *testing.T) {
	for _, c := range []struct {
		name string
		at   []float64
		rows []string // a name and a figure
		want []string
	}{
		{"alike", []float64{-250, -125, 0, 125, 250}, []string{"A2", "5", "A1", "7", "M", "9", "F1", "7", "F2", "5"}, []string{"M", "9", "A1, F1", "7", "A2, F2", "5"}},
		{"not alike", []float64{-125, 0, 125}, []string{"A1", "7", "M", "9", "F1", "8"}, []string{"M", "9", "A1", "7", "F1", "8"}},
		{"neighbors alike", []float64{-250, -125, 0, 125, 250}, []string{"A2", "9", "A1", "9", "M", "9", "F1", "9", "F2", "9"}, []string{"M", "9", "A1, F1", "9", "A2, F2", "9"}},
		{"none at midship", []float64{-62.5, 62.5, 187.5}, []string{"A1", "7", "F1", "7", "F2", "5"}, []string{"A1, F1", "7", "F2", "5"}},
		{"one", []float64{0}, []string{"M", "9"}, []string{"M", "9"}},
		{"none", nil, nil, nil},
	} {
		in := Titled("").Names("Rib").Numbers("Figure").Filled(c.rows...)
		before := Titled("").Names("Rib").Numbers("Figure").Filled(c.rows...)
		var got []string
		for _, r := range in.Outward(c.at).Rows {
			got = append(got, r...)
		}
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		if !reflect.DeepEqual(in, before) {
			t.Errorf("%s: the table it was made of has changed", c.name)
		}
	}
}
