package joint

// Scarcest is the joint of a kind that has least to spare of what it bears.
type Scarcest struct {
	What        string // which one and under what
	Load, Bears float64
	taken       bool
}

// One is that of a single joint.
func One(load, bears float64) Scarcest { return Scarcest{"", load, bears, true} }

// Any reports whether there is a joint at all.
func (s *Scarcest) Any() bool { return s.taken }

// Take looks at one more joint.
func (s *Scarcest) Take(what string, load, bears float64) {
	if !s.taken || load*s.Bears > s.Load*bears {
		*s = Scarcest{what, load, bears, true}
	}
}
