package outfits

type sail struct{}
