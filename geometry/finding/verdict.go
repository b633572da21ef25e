package finding

// Verdict is how grave a finding is. The zero Verdict is Noted.
type Verdict int

// The verdicts, from mild to grave.
const (
	Noted    Verdict = iota // a fact to know
	Holds                   // bears its load for years
	Dry                     // bends dry, and stays below what wood bears for years
	Eases                   // bends dry, and gives up part of its spring over the years
	Steam                   // bends steamed, with room to spare
	Pick                    // bends steamed in straight-grained, air-dried, moist stock
	Strap                   // bends with a strap and end stops, and the builder has them
	Caution                 // comes with the thing: whoever uses it must know
	NoStrap                 // bends only with a strap, and the builder has none
	Missed                  // not what was asked for
	TooTight                // breaks when it is bent
	Unfit                   // cannot be used as it is set up
	Weak                    // bears too much in place
	Unsafe                  // puts people in the water
)

// facts are what is printed of a verdict, whether the thing can be built and used as it
// is, and whether people can drown or something can break in use.
type facts struct {
	word           string
	passes, danger bool
}

func (v Verdict) facts() facts {
	all := [...]facts{
		Noted: {"noted", true, false}, Holds: {"holds", true, false}, Dry: {"bends dry", true, false},
		Eases: {"dry, eases", true, false}, Steam: {"steam", true, false}, Pick: {"steam, pick stock", true, false},
		Strap: {"needs a strap", true, false}, Caution: {"caution", true, true}, NoStrap: {"needs a strap", false, false},
		Missed: {"not as asked", false, false}, TooTight: {"too tight", false, false}, Unfit: {"does not fit", false, true},
		Weak: {"too weak", false, true}, Unsafe: {"unsafe", false, true},
	}
	if v < 0 || int(v) >= len(all) {
		return facts{"unknown", false, true}
	}
	return all[v]
}

// String returns the verdict as it is printed, and "unknown" for any other Verdict.
func (v Verdict) String() string { return v.facts().word }

// Passes reports whether the thing can be built and used as it is. A caution passes;
// an unknown Verdict does not.
func (v Verdict) Passes() bool { return v.facts().passes }

// Danger reports whether people can drown or something can break in use.
func (v Verdict) Danger() bool { return v.facts().danger }
