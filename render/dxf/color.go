package dxf

import "ribwright/layout"

// palette is the first colours of the format by their number: red, yellow, green,
// cyan, blue, magenta and 7, which is black on a white screen.
var palette = [...]layout.Color{1: {R: 255}, {R: 255, G: 255}, {G: 255}, {G: 255, B: 255}, {B: 255}, {R: 255, B: 255}, {}}

// index returns the number of the nearest of the seven colours; release 12 knows
// no others by value.
func index(c layout.Color) int {
	best, least := 7, 1<<30
	for i := 1; i < len(palette); i++ {
		d := square(c.R, palette[i].R) + square(c.G, palette[i].G) + square(c.B, palette[i].B)
		if d < least {
			best, least = i, d
		}
	}
	return best
}

func square(a, b uint8) int { return (int(a) - int(b)) * (int(a) - int(b)) }
