// Package referencetest reads what tests are held to: measured boats, published problems
// and answers of other programs. The package itself is for tests alone.
package referencetest

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// Table reads a file of values parted by commas and returns the rows below its heading,
// of which there is at least one. Lines that begin with # are remarks. The test ends if
// the file cannot be read or its rows are not of one length.
func Table(t testing.TB, path string) [][]string {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d lines, %v", path, len(rows), err)
	}
	return rows[1:]
}

// Number is a cell of a table as a number. The test ends if it is none.
func Number(t testing.TB, cell string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
