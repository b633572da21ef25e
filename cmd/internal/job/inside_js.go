package job

import (
	"ribwright/geometry/sizing"
	"ribwright/layout/report"
)

// nesting is nothing in a browser, which has no nests.
type nesting struct {
	Room   float64
	trials []sizing.Trial
}

func (nesting) fields() []Field                                              { return nil }
func (nesting) check(bool) error                                             { return nil }
func (nesting) open(World) error                                             { return nil }
func (nesting) told() []report.Block                                         { return nil }
func (nesting) kept(_ *sizing.Boat, err error) error                         { return err }
func (nesting) size(make func() (*sizing.Case, error)) (*sizing.Boat, error) { return nil, nil }
