package main

import (
	"fmt"
	"strconv"
	"time"
)

// dateOfFiles returns the date that stands in every file: a fixed one, so that
// the same design gives the same bytes, or what a build system asks for.
// Source: the SOURCE_DATE_EPOCH specification, version 1.1, reproducible-builds.org.
func dateOfFiles(epoch string) (time.Time, error) {
	if epoch == "" {
		return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC), nil
	}
	seconds, err := strconv.ParseInt(epoch, 10, 64)
	// The date must have a year of four figures in the files.
	if err != nil || seconds < 0 || seconds > 253402300799 {
		return time.Time{}, usageError{fmt.Errorf("SOURCE_DATE_EPOCH is %q; accepted: whole seconds since 1970, as 1767225600", epoch)}
	}
	return time.Unix(seconds, 0).UTC(), nil
}
