package kit

// Scope is how much of a build a sum covers; each covers the ones before.
type Scope int

// The scopes.
const (
	FrameAndSkin  Scope = iota
	ReadyForWater       // with what the boat itself is not ready without: the own kits
	WithOutfits
)

// Scopes lists them from the narrowest.
func Scopes() []Scope { return []Scope{FrameAndSkin, ReadyForWater, WithOutfits} }

// String returns the scope in words.
func (s Scope) String() string {
	return [...]string{"frame and skin", "ready for the water", "with the outfits"}[s]
}

// Share is what of an amount kits take, in the amount's unit; frame and skin take the rest.
type Share struct{ Own, Outfits float64 }

// Take adds what something of a scope takes.
func (s *Share) Take(by Scope, amount float64) {
	switch by {
	case ReadyForWater:
		s.Own += amount
	case WithOutfits:
		s.Outfits += amount
	}
}

// Scaled returns the share of an amount that was worked out from another: to of from. No
// share where from is 0.
func (s Share) Scaled(from, to float64) Share {
	if from == 0 {
		return Share{}
	}
	return Share{s.Own * to / from, s.Outfits * to / from}
}

// Within returns how much of an amount a scope covers.
func (s Share) Within(amount float64, all Scope) float64 {
	switch all {
	case FrameAndSkin:
		return amount - s.Own - s.Outfits
	case ReadyForWater:
		return amount - s.Outfits
	}
	return amount
}

// Scope is the narrowest that covers a kit.
func (k Kit) Scope() Scope {
	if k.Own {
		return ReadyForWater
	}
	return WithOutfits
}
