package json

import (
	"bytes"
	"encoding/json"
	"strconv"
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
	err := o.Write(&out)
	return out.Bytes(), err
}

// Write writes the object and those in it on one line: each MarshalJSON is read once more by
// whoever called it, which for a page's drawings takes longer than making them.
//
// Errors: a value that cannot be written, which no report holds.
func (o Object) Write(out *bytes.Buffer) error {
	out.WriteByte('{')
	for i, f := range o {
		if i > 0 {
			out.WriteByte(',')
		}
		out.Write(append(strconv.AppendQuote(out.AvailableBuffer(), f.key), ':'))
		if err := f.write(out); err != nil {
			return err
		}
	}
	out.WriteByte('}')
	return nil
}

func (f field) write(out *bytes.Buffer) error {
	switch v := f.value.(type) {
	case float64:
		return plainly(out, significant(v))
	case Object:
		return v.Write(out)
	case []Object:
		return writeAll(out, v, Object.Write)
	case fixed:
		return v.write(out)
	case []fixed:
		return writeAll(out, v, fixed.write)
	case [][]fixed:
		return writeAll(out, v, func(row []fixed, out *bytes.Buffer) error { return writeAll(out, row, fixed.write) })
	case []run:
		writeRuns(out, v)
	default:
		return plainly(out, v)
	}
	return nil
}

// writeAll writes items one by one; no list is null.
func writeAll[T any](out *bytes.Buffer, all []T, write func(T, *bytes.Buffer) error) error {
	if all == nil {
		out.WriteString("null")
		return nil
	}
	out.WriteByte('[')
	for i, v := range all {
		if i > 0 {
			out.WriteByte(',')
		}
		if err := write(v, out); err != nil {
			return err
		}
	}
	out.WriteByte(']')
	return nil
}

// plainly writes what is no object, without the new line that an encoder ends it with.
func plainly(out *bytes.Buffer, v any) error {
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false) // whoever writes the whole decides
	err := e.Encode(v)
	if err == nil {
		out.Truncate(out.Len() - 1)
	}
	return err
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
