package handwork

// usual is one standard deviation of each error of hand work: one builder in three does
// worse. The first figure is that of a first boat, the second that of a builder of
// several. From memory of workshops and our own choice; no source. Edit them here.
var usual = struct {
	ribLength, allRibs, bendMark    Spread // mm
	board, rib                      Spread // points of springback, %
	thickness, spreader, crossPiece Spread // mm
	mortise, stem                   Spread // mm
	gunwale                         Spread // stiffness, %
}{
	ribLength:  Spread{2, 1},     // shoulder to shoulder, each rib by itself
	allRibs:    Spread{1, 0.5},   // a paper that has stretched or a tape's hook: all ribs alike
	bendMark:   Spread{5, 3},     // where the bilges come to lie, each rib by itself
	board:      Spread{4, 1.8},   // of the board that the ribs come from: all ribs alike. One rib of it that was measured leaves 1.8 of 4 where ribs differ by 2
	rib:        Spread{2, 1},     // of each rib beside its board
	thickness:  Spread{0.2, 0.1}, // of all ribs, from one setting of the plane
	spreader:   Spread{3, 1.5},   // length of each while the plies are glued
	crossPiece: Spread{2, 1},     // length of each
	mortise:    Spread{1, 0.5},   // place of each along the stock
	stem:       Spread{4, 2},     // height of each end over the string: rocker and sheer together
	gunwale:    Spread{10, 7},    // its plies 0.3 mm off in 19 make 5; the rest is wood of several boards
}
