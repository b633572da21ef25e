package design

import "ribwright/geometry/wood/timber"

// Bought returns the moisture of stock as it comes, %: air-dried outdoors 12 to 15 in
// North America, from extension articles of Oregon State University; kiln-dried 6 to 8,
// from memory; green at least fiber saturation, beyond which it bends no better.
func (s Seasoning) Bought() float64 { return [...]float64{14, timber.FiberSaturation, 7}[s] }

// usualMoisture is what stock has when it is steamed and nobody says otherwise, %: as a
// night under water leaves thin air-dried stock, and a day or two leave kiln-dried stock.
func (s Seasoning) usualMoisture() float64 { return [...]float64{23, timber.FiberSaturation, 27}[s] }

// moistures are between what stock can be when it is steamed, %. Dried stock takes up
// little more than 28 in the days that anybody soaks it; stock under 25 is no longer
// green. Common practice, no source.
func (s Seasoning) moistures() (least, most float64) {
	if s == Green {
		return 25, 40
	}
	return 8, 28
}

// seasoningOf is what stock of a moisture most likely is, %: wetter than soaking makes
// it, it is green; drier than the air leaves it, it comes from a kiln.
func seasoningOf(moisture float64) Seasoning {
	_, most := AirDried.moistures()
	switch {
	case moisture > most:
		return Green
	case moisture < 10:
		return KilnDried
	}
	return AirDried
}

// season derives the one of stock and moisture that a file leaves out from the other.
func (d *Design) season(given func(key string) bool) {
	b := &d.Bending
	switch stock, moisture := given("bending.stock"), given("bending.moisture"); {
	case stock && !moisture:
		b.Moisture = b.Stock.usualMoisture()
	case moisture && !stock:
		b.Stock = seasoningOf(b.Moisture)
	}
}

// checkSeasoning refuses stock that cannot be as moist as is said.
func (d *Design) checkSeasoning(c *checker) {
	b := d.Bending
	least, most := b.Stock.moistures()
	c.must(b.Moisture >= least && b.Moisture <= most, "bending.moisture",
		"%s %% does not go with %s stock, which has %s to %s %% when it is steamed; leave one of the two out, or change bending.stock", short(b.Moisture), b.Stock, short(least), short(most))
}
