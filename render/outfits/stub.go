package outfits
type pair struct{}
type sail struct{}
