package json

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// Object is a JSON object: its fields in the order they are written. A plain float64 in
// it is written as significant; every other number says its kind.
type Object []field

type field struct {
	key   string
	value any
}

// MarshalJSON writes the object.
func (o Object) MarshalJSON() ([]byte, error) {
	var out bytes.Buffer
	err := o.write(&out)
	return out.Bytes(), err
}

// write writes the object and those in it in one go: each MarshalJSON is read once more by
// whoever called it, which for a page's drawings takes longer than making them.
func (o Object) write(out *bytes.Buffer) error {
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false) // whoever writes the whole decides
	out.WriteByte('{')
	for i, f := range o {
		if i > 0 {
			out.WriteByte(',')
		}
		fmt.Fprintf(out, "%q:", f.key)
		if err := f.write(out, e); err != nil {
			return err
		}
	}
	out.WriteByte('}')
	return nil
}

func (f field) write(out *bytes.Buffer, e *json.Encoder) error {
	switch v := f.value.(type) {
	case float64:
		return e.Encode(significant(v))
	case Object:
		return v.write(out)
	case []Object:
		if v == nil {
			break
		}
		out.WriteByte('[')
		for i, o := range v {
			if i > 0 {
				out.WriteByte(',')
			}
			if err := o.write(out); err != nil {
				return err
			}
		}
		out.WriteByte(']')
		return nil
	case []run:
		writeRuns(out, v)
		return nil
	}
	return e.Encode(f.value)
}

// each returns what f makes of every item. No items give an empty list, not null.
func each[T, R any](all []T, f func(T) R) []R {
	return upTo(len(all), func(i int) R { return f(all[i]) })
}

// upTo returns what f makes of the numbers from 0 to n-1.
func upTo[R any](n int, f func(i int) R) []R {
	out := make([]R, n)
	for i := range out {
		out[i] = f(i)
	}
	return out
}

// orNull turns an empty list into null, where other programs know it so.
func orNull[T any](list []T) any {
	if len(list) == 0 {
		return nil
	}
	return list
}
