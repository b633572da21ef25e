package hours

import "ribwright/geometry/outfit/kit"

// outfit is the work on an outfit besides sawing, which is counted with the boards.
func (c *counter) outfit(k kit.Kit) {
	boards, metres := 0.0, map[kit.Form]float64{}
	for _, p := range k.Pieces {
		n := float64(p.Count)
		metres[p.Form] += n * p.Long / 1000
		if p.Form == kit.Board {
			boards += n
		}
	}
	c.add(Outfit, k.Name+": print, check and tape patterns", 1, "set", 30)
	c.add(Outfit, k.Name+": shape and drill boards", boards, "boards", 20)
	c.add(Outfit, k.Name+": plane spars round", metres[kit.Spar], "m", 20)
	c.add(Outfit, k.Name+": plane beams, round their edges", metres[kit.Beam], "m", 8)
	c.add(Outfit, k.Name+": sew hems and seams", k.Sewing, "m", 5)
	c.add(Outfit, k.Name+": patch and eyelet corners", float64(k.Corners), "corners", 15)
	c.add(Outfit, k.Name+": fit and try on land", 1, "outfit", 60)
}

// layers is the gluing of an outfit's thick and wide pieces.
func (c *counter) layers() {
	lines, begun := 0.0, map[string]bool{}
	for _, s := range c.p.Sticks {
		if s.Member == "" || !s.Outfit() {
			continue
		}
		if begun[s.Member] {
			lines++
		}
		begun[s.Member] = true
	}
	c.add(Outfit, "glue layers and staves", lines, "glue lines", 15)
}
