package book

import (
	"math"

	"ribwright/layout/report/trial"
)

// holding tells in the chapter on gunwales what a sprung edge-set asks of the frame.
func (w *writer) holding() { w.add(trial.EdgeSet(w.Bend, w.Letters)...) }

// joined are the steps before gunwales that are sprung edgewise are spread; none where
// they are not.
func (w *writer) joined() []string {
	e := w.Bend.EdgeSet
	if e == nil {
		return nil
	}
	drop := -math.Min(e.Loose.Sheer[0], e.Loose.Sheer[1])
	return []string{"Mark the keel from the story stick and join it to both stems before anything is sprung: peg or screw each foot on its landing so that it can neither slide nor turn, with the keel on blocks at its rocker heights. With loose feet the gunwales' ends would come down by up to " + w.Length(drop) + " when you let go."}
}

// sprung are the steps after they are spread.
func (w *writer) sprung() []string {
	if w.Bend.EdgeSet == nil {
		return nil
	}
	return []string{"Now spring the edge-set: lift the gunwales' ends into the stems' notches, lash them there, and prop ends and midship at their heights until ribs and keel are lashed."}
}

// letGo are the steps when ribs and keel are lashed.
func (w *writer) letGo() []string {
	if w.Bend.EdgeSet == nil {
		return nil
	}
	return []string{"Take the props away when the keel is lashed to the ribs and the end ribs' heads are pegged; measure heights and rocker again, and compare them with The edge-set, before the stringers go on."}
}
