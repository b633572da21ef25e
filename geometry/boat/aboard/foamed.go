package aboard

import "strings"

// Foamed reports whether foam lies along the sides between two stations.
func (b Boat) Foamed(from, to float64) bool {
	for _, f := range b.Flotation.Bags {
		if f.Foam && strings.HasPrefix(f.Where, "port") && f.Aft < to && f.Fore > from {
			return true
		}
	}
	return false
}
