package balance

// Trial is the frame with its ribs set one way: with all members in, and with the
// chosen ones out.
type Trial struct {
	Set  string    // "unset", "neutral" or "off"
	Open []float64 // of each rib, mm; nil for none
	In   *State
	Out  *State
}

// Moved returns by how much the boat's beam changes at the station x when the
// members come out, mm, wider positive.
func (t Trial) Moved(x float64) float64 { return 2 * (t.Out.At(x) - t.In.At(x)) }

// Off returns how far the boat's beam at the station x is from the design with
// everything in, mm, wider positive.
func (t Trial) Off(x float64) float64 { return 2 * t.In.At(x) }

// Trials returns what comes of taking members out with ribs that are unset, just
// as wide as their places; with the neutral set; and with every rib miss mm wider
// than that, as a builder may come to it. Without a neutral set only the first.
func (b *Boat) Trials(w *Without, miss float64) ([]Trial, error) {
	trials := []Trial{{Set: "unset"}}
	if b.Why == nil {
		trials = append(trials, Trial{Set: "neutral", Open: b.Open}, Trial{Set: "off", Open: b.Off(miss)})
	}
	for i := range trials {
		t := &trials[i]
		var err error
		if t.In, err = b.Settle(t.Open, nil); err != nil {
			return nil, err
		}
		if t.Out, err = b.Settle(t.Open, w); err != nil {
			return nil, err
		}
	}
	return trials, nil
}
