package book

import (
	"fmt"

	"ribwright/geometry/boat/skin"
)

// cloth says whether the stringers hold the cloth off the ribs.
func (w *writer) cloth() {
	f := w.Frame
	ribs, worst := skin.ProudRibs(f)
	if len(ribs) == 0 {
		if worst.By <= -0.1 {
			w.say(fmt.Sprintf("The stringers hold the flat cloth off every rib; rib %s comes nearest, %s inside it between %s. Stringers that are planed thinner than the design leave less.",
				worst.Rib, w.Fine(-worst.By), worst.Between(f)))
		}
		return
	}
	text := fmt.Sprintf("Ribs %s stand outside the flat cloth, most of all rib %s, by %s between %s: the cloth lies on them there, they show through and chafe it.",
		skin.Runs(f, ribs), worst.Rib, w.Fine(worst.By), worst.Between(f))
	if cure, ok := skin.CureOf(f); ok {
		text += fmt.Sprintf(" The cheapest cure, before the stringers are lashed: %s, and make the book and the patterns anew; then every rib stays inside the cloth.", cure.Words(f.Design, w.Fine))
	} else {
		text += " Round their outer edges over with care."
	}
	w.say(text)
}
