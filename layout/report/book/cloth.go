package book

import (
	"fmt"

	"ribwright/geometry/boat/skin"
)

// cloth says whether the stringers hold the cloth off the ribs.
func (w *writer) cloth() {
	f, c := w.Frame, w.Clearance
	near := c.Nearest
	if len(c.Proud) == 0 {
		if near.By <= -0.1 {
			w.say(fmt.Sprintf("The stringers hold the flat cloth off every rib; rib %s comes nearest, %s inside it between %s. Stringers that are planed thinner than the design leave less.",
				near.Rib, w.Fine(-near.By), near.Between(f)))
		}
		return
	}
	text := fmt.Sprintf("Ribs %s stand outside the flat cloth, most of all rib %s, by %s between %s: the cloth lies on them there, they show through and chafe it.",
		skin.Runs(f, c.Proud), near.Rib, w.Fine(near.By), near.Between(f))
	if c.Cure != nil {
		text += fmt.Sprintf(" The cheapest cure, before the stringers are lashed: %s, and make the book and the patterns anew; then every rib stays inside the cloth.", c.Cure.Words(f.Design, w.Fine))
	} else {
		text += " Round their outer edges over with care."
	}
	w.say(text)
}
