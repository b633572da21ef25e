package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// classOf writes a table of n builders, all in solo canoes of their own size.
func classOf(b testing.TB, n int) string {
	b.Helper()
	var rows strings.Builder
	rows.WriteString("name,use,weight_kg,stature_cm\n")
	for i := range n {
		fmt.Fprintf(&rows, "Builder %d,solo,%.1f,%d\n", i+1, 60+0.1*float64(i%300), 160+i%25)
	}
	name := filepath.Join(b.TempDir(), "class.csv")
	if err := os.WriteFile(name, []byte(rows.String()), 0o666); err != nil {
		b.Fatal(err)
	}
	return name
}

// BenchmarkClass sizes and lofts a class of 40 on all cores, and reports its time
// as a share of 40 times one builder alone.
func BenchmarkClass(b *testing.B) {
	const n = 40
	table, one := classOf(b, n), classOf(b, 1)
	lofted := func(table string) time.Duration {
		start := time.Now()
		if code := run([]string{"class", table, "--out", b.TempDir(), "--book=false"}, io.Discard, os.Stderr); code != done {
			b.Fatal("exit code", code)
		}
		return time.Since(start)
	}
	for b.Loop() {
		single := lofted(one)
		whole := lofted(table)
		b.ReportMetric(whole.Seconds()/(n*single.Seconds()), "class/alone")
		b.ReportMetric(n/whole.Seconds(), "boats/s")
	}
}
