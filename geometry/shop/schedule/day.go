package schedule

// Day is how work and rest take turns, in slots. The zero Day has no evening.
type Day struct{ Work, Night int }

// Of is the day of a slot of work, counted from 0, and which of its slots it is.
func (d Day) Of(slot int) (day, in int) {
	if d.Work == 0 {
		return 0, slot
	}
	return slot / d.Work, slot % d.Work
}

// clock is when a slot of work begins, in slots of the clock.
func (d Day) clock(slot int) int {
	day, in := d.Of(slot)
	return day*(d.Work+d.Night) + in
}

// done is when work of some length is done, in slots of the clock: in the evening where it
// fills the day, not on the next morning.
func (d Day) done(start, length int) int {
	if length == 0 {
		return d.clock(start)
	}
	return d.clock(start+length-1) + 1
}

// soonest is the first slot of work that begins no sooner than the clock says.
func (d Day) soonest(clock int) int {
	if d.Work == 0 {
		return clock
	}
	day, in := clock/(d.Work+d.Night), clock%(d.Work+d.Night)
	return day*d.Work + min(in, d.Work)
}

// whole is the first slot from which work of some length ends before the evening.
func (d Day) whole(slot, length int) int {
	if day, in := d.Of(slot); d.Work > 0 && in+length > d.Work {
		return (day + 1) * d.Work
	}
	return slot
}

// rounded is a number of slots made up to whole days.
func (d Day) rounded(slots int) int {
	if d.Work == 0 {
		return slots
	}
	return (slots + d.Work - 1) / d.Work * d.Work
}
