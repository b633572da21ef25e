package pattern

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
)

// lettered finds inches with their millimeters behind them.
var lettered = regexp.MustCompile(`(-?\d+(?: \d+/\d+|/\d+|\.\d+)?) in (?:\(|= )(-?\d+\.\d) mm`)

// TestInchesAsFineAsMillimeters: on the patterns too what calipers measure, under 2 in, is given in
// inches as finely as in millimeters: to half a thousandth, a drill to half a 64th; and nothing that is something
// reads 0.
func TestInchesAsFineAsMillimeters(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		if units != measure.Imperial {
			return
		}
		seen := 0
		for _, d := range All(bent(t, f), units, Strips) {
			for _, words := range d.Texts {
				for _, m := range lettered.FindAllStringSubmatch(words.Words, -1) {
					l, errA := measure.ParseLength(m[1] + " in")
					mm, errB := strconv.ParseFloat(m[2], 64)
					most := 25.4/32 + 0.051
					switch {
					case strings.Contains(m[1], "."):
						most = 25.4/2000 + 0.051
					case strings.Contains(words.Words, "painter's"): // a bit, from 3/8 in on in sixteenths
					case math.Abs(mm) < 50.8 && !strings.Contains(m[0], "="):
						most = 25.4/128 + 0.051
					}
					if errA != nil || errB != nil || math.Abs(float64(l)-mm) > most || m[1] == "0" && mm != 0 {
						t.Errorf("%s: %q in %q", d.Name, m[0], words.Words)
					}
					seen++
				}
			}
		}
		if seen < 50 {
			t.Errorf("only %d were read", seen)
		}
	})
}
