package job

// fromTables is nothing in a browser: fitting a design to a table of offsets would make
// the engine there a third larger, and no page asks for it.
func fromTables() []Verb { return nil }
