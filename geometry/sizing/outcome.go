package sizing

// Status is how a row of a class came out.
type Status string

// The ways.
const (
	Made    Status = "made"
	Kept    Status = "kept" // whole files of the same boat were there already
	Failed  Status = "failed"
	NotDone Status = "not done" // the run was interrupted before
)

// Outcome is how a row of a class came out: what a summary tells of it and no more, so
// that a class of thousands can be held at once.
type Outcome struct {
	Line   int // of the table
	Name   string
	Use    string // the family
	Status Status
	Folder string // "" when there is no boat
	Why    string // it failed or was not done

	Edition     string // of the design
	Fingerprint string // likewise

	Length, Beam, Depth  float64 // mm
	Draft, Freeboard, GM float64 // mm, loaded
	AllUp, BoatWeight    float64 // kg
	ChecksFailed         []string
}

// Take notes what a summary tells of a boat.
func (o *Outcome) Take(b *Boat) error {
	h := b.Design.Hull
	o.Folder = b.Design.Slug()
	o.Length, o.Beam, o.Depth = float64(h.Length), float64(h.Beam), float64(h.Depth)
	o.Draft, o.Freeboard, o.GM = b.Found["draft"], b.Found["freeboard"], b.Found["gm"]
	o.AllUp, o.BoatWeight = b.Found["all_up"], b.Found["boat_weight"]
	for _, v := range b.Failures() {
		o.ChecksFailed = append(o.ChecksFailed, v.About)
	}
	var err error
	o.Edition = b.Design.Edition
	o.Fingerprint, err = b.Design.Fingerprint()
	return err
}

// Counts counts the outcomes of each status.
func Counts(all []Outcome) map[Status]int {
	out := map[Status]int{}
	for _, o := range all {
		out[o.Status]++
	}
	return out
}
