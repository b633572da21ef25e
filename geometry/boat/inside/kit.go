package inside

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
)

// The entries of the list of weights.
const (
	slats  = "Floor slats"
	braces = "Footbraces"
	backs  = "Backrests"
)

// Lashing is the cord that holds a slat or a rail to a rib once, m: from beside one batten over
// the slat to beside the next and back, with its knot. Estimate.
const Lashing = 0.6

// CordWide is how thick that cord is, mm.
const CordWide = 2.0

// What a meter of it weighs, kg, and is made of, kg/m3. Estimates.
const cordMass, cordDense = 0.0035, 1380.0

// LoopLong is the webbing of one loop round a rib or a stringer, m: round the wood, an eye
// for a strap, and a water knot with its tails. Estimate.
const LoopLong = 0.45

// KneeSquare is the square that is sawn corner to corner into the two knees of a footbrace,
// mm, with room for the cut.
const KneeSquare = Knee + 5

// buckled is what a backrest's strap takes besides: two buckles, and ends to tie down, mm.
const buckled = 600.0

// Kit lists what all of it is made of, besides flotation. A wood that is not known shows
// when the kit is weighed.
func (o Fit) Kit(h *hull.Hull, d *design.Design) kit.Kit {
	k := kit.Kit{Name: "inside",
		Pieces: make([]kit.Piece, 0, len(o.Floors)+3*len(o.Braces)+len(o.Backs)), Things: make([]kit.Thing, 0, len(o.Floors)+4*len(o.Braces)+len(o.Backs))}
	for _, fl := range o.Floors {
		fl.kit(&k, h, d, o.Wood)
	}
	for _, b := range o.Braces {
		b.kit(&k, o.Wood)
	}
	for _, b := range o.Backs {
		b.kit(&k, o.Wood)
	}
	return k
}

// Lashings is how many times each slat of a floor is lashed: at its ends and at every
// second rib between.
func (fl Floor) Lashings() int { return len(fl.Ribs)/2 + 1 }

func (fl Floor) kit(k *kit.Kit, h *hull.Hull, d *design.Design, wood string) {
	x := (fl.Aft + fl.Fore) / 2
	at := geometry.Point3{X: x, Z: h.RibsZ(x) + fl.Thick/2}
	k.Pieces = append(k.Pieces, kit.Piece{Group: slats, Name: "floor slat", Count: fl.Count, Form: kit.Beam, Wood: wood, Long: fl.Long, Wide: fl.Wide, Thick: fl.Thick, Fill: 1, At: at, Scarf: d.Gunwale.ScarfSlope})
	n := float64(fl.Count * fl.Lashings())
	k.Things = append(k.Things, kit.Thing{Group: slats, Key: "cord", Name: "lashing cord", Amount: n * Lashing, Unit: "m",
		How: fmt.Sprintf("%.0f lashings of floor slats", n), Mass: n * Lashing * cordMass, Dense: cordDense, At: at})
	k.Works = append(k.Works, kit.Work{Name: "lash floor slats", Count: n, Unit: "lashings", Minutes: 3})
}

func (b Brace) kit(k *kit.Kit, wood string) {
	at := geometry.Point3{X: b.At, Z: b.Floor + b.Tall/2}
	k.Pieces = append(k.Pieces,
		kit.Piece{Group: braces, Name: "footbrace board", Count: 1, Wood: wood, Long: b.Bar, Wide: b.Tall, Thick: b.Thick, Fill: 1, At: at},
		kit.Piece{Group: braces, Name: "footbrace rail", Count: 2, Form: kit.Beam, Wood: wood, Long: b.Rail, Wide: b.RailTall, Thick: b.RailWide, Fill: 1, At: at},
		kit.Piece{Group: braces, Name: "square for two footbrace knees", Count: 1, Wood: wood, Long: KneeSquare, Wide: KneeSquare, Thick: b.RailWide, Fill: Knee * Knee / (KneeSquare * KneeSquare), At: at})
	k.Things = append(k.Things,
		kit.Thing{Group: braces, Key: "brace-peg", Name: "hardwood pegs of 8 mm", Amount: 2, Unit: "each", How: "a footbrace's, 60 mm long", Mass: 0.004, Dense: 670, At: at},
		kit.Thing{Group: braces, Key: kit.ScrewKey, Name: kit.ScrewName, Amount: 6, Unit: "each", How: "30 mm, three through the board of a footbrace into each knee", Mass: 6 * kit.ScrewMass, At: at},
		kit.Thing{Group: braces, Key: "glue", Name: "waterproof glue", Amount: 0.05, Unit: "kg", How: "knees of a footbrace", At: at},
		kit.Thing{Group: braces, Key: "cord", Name: "lashing cord", Amount: 4 * Lashing, Unit: "m", How: "4 lashings of a footbrace's rails", Mass: 4 * Lashing * cordMass, Dense: cordDense, At: at})
	k.Works = append(k.Works, kit.Work{Name: "bore, glue and lash a footbrace", Count: 1, Unit: "footbrace", Minutes: 45})
}

func (b Back) kit(k *kit.Kit, wood string) {
	at := geometry.Point3{X: b.At, Z: b.Floor + b.Low + b.Tall/2}
	across := (2*b.Gunwale + buckled) / 1000
	web := across + 2*LoopLong
	k.Pieces = append(k.Pieces, kit.Piece{Group: backs, Name: "backrest bar", Count: 2, Wood: wood, Long: b.Across, Wide: b.Bar, Thick: b.Thick, Fill: 1, At: at})
	k.Things = append(k.Things, kit.Webbing(backs, web,
		fmt.Sprintf("a backrest's: %.1f m across and to hold it down, 2 loops of %.2f m, 2 buckles", across, LoopLong), at))
	k.Works = append(k.Works, kit.Work{Name: "tie loops of webbing for a backrest round both heads of its rib, close under the gunwales", Count: 2, Unit: "loops", Minutes: 2, Bare: true},
		kit.Work{Name: "make and hang a backrest", Count: 1, Unit: "backrest", Minutes: 30})
}
