package body

import "math"

// Children and dogs lie outside the survey. What is said of them here is from memory, of
// growth charts and of kennel clubs' standards, and good to a tenth or so.

// Grown is the least mass of a grown person, kg: the women's 5th percentile of the survey.
const Grown = 51.3

// GrownSitting is the sitting height of grown people over their stature (the survey: 0.526
// in women and 0.523 in men).
const GrownSitting = 0.525

// grown and small are the statures, mm, between which a child's shares change.
const grown, small = 1500.0, 800.0

// young is 0 in a grown person's stature and 1 in that of a child of two.
func young(stature float64) float64 {
	return math.Min(1, math.Max(0, (grown-stature)/(grown-small)))
}

// childStature pairs masses of children, kg, with middling statures, mm.
var childStature = [...][2]float64{{3, 520}, {10, 780}, {12, 870}, {15, 1000}, {20, 1150}, {25, 1270}, {30, 1360}, {35, 1430}, {40, 1490}, {45, 1520}, {Grown, 1530}}

// StatureOf is a middling stature, mm, of a child of a mass, kg; from the women's 5th
// percentile on, 51.3 kg, it stays what it is there.
func StatureOf(mass float64) float64 {
	last := childStature[0]
	for _, next := range childStature[1:] {
		if mass <= next[0] {
			return last[1] + (next[1]-last[1])*math.Max(0, mass-last[0])/(next[0]-last[0])
		}
		last = next
	}
	return last[1]
}

// SittingShare is the sitting height over the stature: more in children than in grown
// people, for their legs are shorter: some 0.55 at five years and 0.58 at two.
func SittingShare(stature float64) float64 { return GrownSitting + 0.055*young(stature) }

// HeadHeavy is how much higher than in grown people a child's weight lies over the seat,
// as a share of the sitting height: the head is a larger part of it.
func HeadHeavy(stature float64) float64 { return 0.04 * young(stature) }

// HipsOf is how broad somebody of a mass, kg, is across the hips, sitting, mm: it meets the
// survey's median of women to 2 %, is some 10 % over that of men, and goes on to children
// as the cube root of the mass.
func HipsOf(mass float64) float64 { return 96 * math.Cbrt(mass) }

// A dog's measures go with the cube root of its mass, kg, mm: one of 30 kg stands 590 mm
// at the shoulder, takes up 650 mm of floor, and is 200 mm through the chest.

// Shoulder is how high a dog stands at the shoulder.
func Shoulder(mass float64) float64 { return 190 * math.Cbrt(mass) }

// DogLong is how much of the floor's length a dog takes up, lying or sitting.
func DogLong(mass float64) float64 { return 210 * math.Cbrt(mass) }

// DogWide is how wide a dog's chest is.
func DogWide(mass float64) float64 { return 65 * math.Cbrt(mass) }

// How high a dog's weight lies over what it lies or stands on, as shares of its height at
// the shoulder.
const (
	DogLying    = 0.3
	DogStanding = 0.72
)
