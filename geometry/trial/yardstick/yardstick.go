// Package yardstick holds how known boats stand, to lay a boat beside them: canoes that
// were measured long ago. They are no rule: they show what people have paddled for a hundred
// years. Designs that come with the program are not among them, for none would be laid beside
// itself.
package yardstick

import (
	"math"
	"sort"
)

// Boat is a known boat with what it carries.
type Boat struct {
	Name     string
	From     string    // where its lines are from
	Mass     float64   // kg in all
	People   float64   // kg of it
	Lever    float64   // mm, the greatest righting lever
	Moment   float64   // N m, the greatest righting moment
	Flooding float64   // degrees of heel at which water comes in; none of them goes over before
	Held     float64   // mm, how far all people's weight can be moved aside at once and held
	Levers   []float64 // mm, righting levers at every fifth degree of heel from upright on, the last at Flooding
}

// Step is between the heels of two Levers, degrees.
const Step = 5.0

// The sources of the measured canoes.
const (
	bulletin = "E. T. Adney and H. I. Chapelle, Smithsonian Bulletin 230, 1964"
	stephens = "W. P. Stephens, Canoe and Boat Building, 1885"
)

// For returns the known boats for so many people, the stiffest first: with one aboard
// for one person or nobody, with two for more.
//
// The measured canoes were floated by this program in fresh water, to the outside of the
// skin: with one person of 75 kg and 110 kg in all, with two of 75 kg and 210 kg in all,
// the middle of all weight 330 mm over the baseline, which suits people who kneel or sit
// low. Levers are good to 1 mm.
func For(people int) []Boat {
	out := []Boat{
		{"Malecite river canoe, 5.08 m (figure 31)", bulletin, 110, 75, 80, 86, 37, 125, []float64{0, 35, 62, 77, 80, 76, 67, 55, 50}},
		{"Malecite river canoe of 1890, 5.16 m (figure 69)", bulletin, 110, 75, 41, 44, 33, 70, []float64{0, 13, 24, 32, 38, 41, 41, 40}},
		{"Algonkin hunter's canoe, 4.06 m (figure 108)", bulletin, 110, 75, 39, 42, 33, 64, []float64{0, 12, 24, 33, 38, 39, 38, 36}},
		{"Cruising canoe of 1883, 4.27 m", stephens, 110, 75, 36, 38, 30, 56, []float64{0, 14, 26, 33, 35, 34, 32}},
	}
	if people > 1 {
		out = []Boat{
			{"Malecite river canoe, 5.08 m (figure 31)", bulletin, 210, 150, 37, 77, 26, 55, []float64{0, 15, 28, 35, 37, 33, 33}},
			{"Malecite river canoe of 1890, 5.16 m (figure 69)", bulletin, 210, 150, 19, 38, 24, 28, []float64{0, 6, 11, 15, 17, 19}},
			{"Cruising canoe of 1883, 4.27 m", stephens, 210, 150, 14, 30, 19, 21, []float64{0, 5, 9, 12, 14}},
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Lever > out[j].Lever })
	return out
}

// Steadier tells over how many of the known boats a greatest righting lever, mm, lies.
func Steadier(lever float64, people int) (than, of int) {
	all := For(people)
	for _, b := range all {
		if lever >= b.Lever {
			than++
		}
	}
	return than, len(all)
}

// Least is what is asked of any boat with its people and gear.
type Least struct {
	Lever   float64 // mm, of the greatest righting lever
	Held    float64 // mm, that all people's weight may be moved aside at once and held
	Upright float64 // radians of heel, before which it must not go over by itself; less where water comes in earlier
	Trim    float64 // mm over the waterline either way, with gear that can be shifted
	Bare    float64 // mm of trim where there is less gear than that
	Gear    float64 // kg, from which on gear can level the boat
}

// LeastFor is the least that is asked for with so many people. For one person lever and
// shift are about those of the weakest measured canoe of that size, for two a little more
// than theirs; trim and heel are our own choice.
func LeastFor(people int) Least {
	l := Least{Lever: 28, Held: 36, Upright: 40 * math.Pi / 180, Trim: 25, Bare: 45, Gear: 10}
	if people > 1 {
		l.Lever, l.Held = 20, 18
	}
	return l
}
