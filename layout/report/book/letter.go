package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/report"
)

// length letters mm in running words.
func (w *writer) length(mm float64) string {
	if w.imperial() {
		return measure.FeetInches(mm)
	}
	return measure.MM(mm, 0) + " mm"
}

// fine letters mm to the tenth, or to the sixteenth of an inch with the mm behind.
func (w *writer) fine(mm float64) string {
	if w.imperial() {
		return measure.Sixteenths(mm) + " (" + measure.MM(mm, 1) + " mm)"
	}
	return measure.MM(mm, 1) + " mm"
}

// cell letters mm for a column headed with the unit.
func (w *writer) cell(mm float64) string {
	if w.imperial() {
		return strings.TrimSuffix(measure.Sixteenths(mm), " in")
	}
	return measure.MM(mm, 1)
}

// mark letters mm for a column of what is marked on wood: inches carry the mm.
func (w *writer) mark(mm float64) string {
	if w.imperial() {
		return w.cell(mm) + " (" + measure.MM(mm, 1) + ")"
	}
	return measure.MM(mm, 1)
}

// unit is what cells are in, and marks what marks are in.
func (w *writer) unit() string {
	if w.imperial() {
		return "in"
	}
	return "mm"
}

func (w *writer) marks() string {
	if w.imperial() {
		return "in (mm)"
	}
	return "mm"
}

// kilos letters a mass.
func (w *writer) kilos(kg float64) string {
	if w.imperial() {
		return fmt.Sprintf("%.1f lb", kg/0.45359237)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

// signed letters a station with its way from midship.
func (w *writer) station(x float64) string {
	way := " forward"
	switch {
	case math.Abs(x) < 0.05:
		return "midship"
	case x < 0:
		way = " aft"
	}
	return w.length(math.Abs(x)) + way
}

// angle letters an angle in degrees.
func angle(a float64) string {
	s := fmt.Sprintf("%.1f", a*180/math.Pi)
	if s == "-0.0" {
		s = "0.0"
	}
	return s
}

// columns that hold words, words that may be broken, and figures.
func names(head string) report.Column   { return report.Column{Head: head} }
func text(head string) report.Column    { return report.Column{Head: head, Text: true} }
func figures(head string) report.Column { return report.Column{Head: head, Align: layout.Right} }
