package job

import "ribwright/layout/report"

// onScreen makes none in a browser: templates would make the engine there an eighth
// larger, and the book as a PDF shows the same.
func onScreen(string, report.Report) (Output, error) {
	return Output{}, misuse("html", "a browser makes the book as a PDF alone; leave it out")
}
