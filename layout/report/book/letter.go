package book

import "ribwright/layout/report"

// columns that hold names, words that may be broken, and figures.
func names(head string) report.Column   { return report.Names(head) }
func text(head string) report.Column    { return report.Words(head) }
func figures(head string) report.Column { return report.Numbers(head) }
