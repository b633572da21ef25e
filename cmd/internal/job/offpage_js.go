package job

// offPage is nothing in a browser: fitting a design to a table of offsets would make the
// engine there a third larger, nests, editions, frames on the
// trestles and what many builds say a tenth, and no page asks for them.
func offPage() []Verb { return nil }
