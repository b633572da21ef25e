// Package text sets a report for a terminal.
package text

import (
	"fmt"
	"io"

	"ribwright/layout/report"
)

// Encode writes the report.
func Encode(w io.Writer, r report.Report) error {
	_, err := fmt.Fprintf(w, "%s\n%v\n", r.Title, r.Blocks)
	return err
}
