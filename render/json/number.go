package json

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"

	"ribwright/geometry"
)

// The kinds of number, by how they are rounded. What is not finite is null.
type (
	fixed       float64 // lengths and angles: four decimals, so that sums of a hundred still agree to 0.01 mm
	significant float64 // what is worked out: seven figures, more than any figure means and less than two processors differ by
	minute      float64 // as significant, of what is as small as a viscosity
	factor      float64 // multiplies lengths of metres: nine decimals keep them true to a hundredth of a micrometre
)

// MarshalJSON writes the number.
func (v fixed) MarshalJSON() ([]byte, error) { return written(v.rounded()) }

func (v fixed) rounded() float64 { return decimals(float64(v), 1e4) }

// write writes the number as MarshalJSON does, without being read again.
func (v fixed) write(out *bytes.Buffer) error {
	if !geometry.Finite(float64(v)) {
		out.WriteString("null")
		return nil
	}
	out.Write(strconv.AppendFloat(out.AvailableBuffer(), v.rounded()+0, 'f', -1, 64))
	return nil
}

// MarshalJSON writes the number.
func (v factor) MarshalJSON() ([]byte, error) { return written(decimals(float64(v), 1e9)) }

// MarshalJSON writes the number.
func (v significant) MarshalJSON() ([]byte, error) { return written(figures(float64(v))) }

// MarshalJSON writes the number.
func (v minute) MarshalJSON() ([]byte, error) { return written(figures(float64(v)*1e9) / 1e9) }

func written(v float64) ([]byte, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(v + 0) // no minus zero
}

// decimals rounds to one part in k.
func decimals(v, k float64) float64 { return math.Round(v*k) / k }

// figures rounds to seven significant figures, no finer than a millionth; specks
// beside everything a boat has become zero.
func figures(v float64) float64 {
	if math.Abs(v) < 1e-9 {
		return 0
	}
	return decimals(v, math.Min(1e6, math.Pow(10, 6-math.Floor(math.Log10(math.Abs(v))))))
}

// as gives all of some numbers a kind.
func as[K ~float64](all ...float64) []K {
	return each(all, func(v float64) K { return K(v) })
}

// none is a number that there is none of.
var none = math.NaN()

// inDegrees turns radians.
func inDegrees(a float64) float64 { return a * 180 / math.Pi }

func deg(a float64) fixed { return fixed(inDegrees(a)) }
