package measure

import (
	"fmt"
	"math"
)

// ScrewLong is how long a wood screw of so many mm is as shops in this system sell it: in
// inches by eighths under one inch and by quarters from there on, the longest that is no more
// than a millimeter longer.
func (s System) ScrewLong(mm float64) float64 {
	if s != Imperial {
		return mm
	}
	step := 25.4 / 8
	if mm+1 >= 25.4 {
		step = 25.4 / 4
	}
	return step * math.Floor((mm+1)/step)
}

// ScrewNumber is the number of a wood screw by its shank: 0.060 in and 0.013 in more for each.
func ScrewNumber(wide float64) string {
	return fmt.Sprintf("No. %.0f", (wide/25.4-0.060)/0.013)
}

// Screw letters a wood screw by its shank and its length, mm: "No. 6 x 1 1/2 in (3.5 x 40 mm)".
// Metric: "3.5 mm by 40.0 mm".
func (s System) Screw(wide, long float64) string {
	if s == Imperial {
		return fmt.Sprintf("%s x %s (%s x %s mm)", ScrewNumber(wide), Sixteenths(s.ScrewLong(long)), MM(wide, 1), MM(long, 0))
	}
	return MM(wide, 1) + " mm by " + MM(long, 1) + " mm"
}
