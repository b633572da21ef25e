package rendertest

import (
	"errors"
	"fmt"
)

// ErrFull is what a full writer gives.
var ErrFull = errors.New("no space left")

// Full is a writer with room for so many bytes, as a disk that fills up.
type Full struct{ Room int }

// Write takes p while there is room; its error wraps ErrFull.
func (f *Full) Write(p []byte) (int, error) {
	if len(p) > f.Room {
		return f.Room, fmt.Errorf("disk: %w", ErrFull)
	}
	f.Room -= len(p)
	return len(p), nil
}
