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
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false) // whoever writes the whole decides
	for i, f := range o {
		if i > 0 {
			out.WriteByte(',')
		}
		fmt.Fprintf(&out, "%q:", f.key)
		if v, plain := f.value.(float64); plain {
			f.value = significant(v)
		}
		if err := e.Encode(f.value); err != nil {
			return nil, err
		}
	}
	return fmt.Appendf(nil, "{%s}", out.Bytes()), nil
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
