// Package frametest builds frames for tests. The package itself is for tests alone.
package frametest

import (
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
)

// Shipped builds a shipped design after a change, or as it is where change is nil. The
// change is not checked as a file is: a test that wants it checked asks the frame's own
// design. The test ends if there is no such design or it cannot be built.
func Shipped(t testing.TB, name string, change func(*design.Design)) *frame.Frame {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(d)
	}
	f, err := frame.Build(d)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return f
}
