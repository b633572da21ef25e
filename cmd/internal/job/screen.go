//go:build !js

package job

import (
	"io"

	"ribwright/layout/report"
	"ribwright/render/html"
	"ribwright/render/svg"
)

// onScreen is a book as one HTML file.
func onScreen(slug string, told report.Report) (Output, error) {
	return Output{slug + "-book.html", "the same for a screen", func(to io.Writer) error { return html.Encode(to, told, svg.EncodeInline) }}, nil
}
