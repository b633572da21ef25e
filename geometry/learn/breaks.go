package learn

import (
	"math"
	"slices"

	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/learn/pool"
)

// Breaks is how often ribs broke by how hard they are bent.
type Breaks struct {
	Bent, Broken int
	Builds       int
	Limit        pool.Interval // inner radius over thickness at which one rib in twenty breaks, with what was counted on
	Before       float64
	Worth        float64
	Steep        float64 // how many times a share broken to whole falls for each time that the radius grows by e
	Apart        float64 // how many times the builds differ more than ribs by chance would
	Rows         []BreakRow
	Spread       *Spread // of builders; nil with fewer than four
}

// BreakRow is ribs of about one bend.
type BreakRow struct {
	From, To     float64 // inner radius over thickness
	Bent, Broken int
	Now          float64 // share that is to be expected
}

// Spread is the share that builders break, least and most: as counted, and drawn together
// by how few ribs each one is known by.
type Spread struct {
	Least, Most           float64
	DrawnLeast, DrawnMost float64
}

// What was counted on before: families ask for an inner radius of 13 thicknesses, where one
// rib in twenty is taken to break, give or take a fifth for who has seen five builds. From
// memory, no source, and our own choice.
const (
	BreakLimit  = 13.0
	breakDoubt  = 0.2
	breakSteep  = 8.0
	steepDoubt  = 0.5
	breakShare  = 1.0 / 20
	breakPoints = 60 // of a grid each way, four deviations wide
)

// broke is a rib that was bent.
type broke struct {
	build int
	ratio float64
	yes   bool
}

// breaksOf learns where ribs break: the share broken to whole falls with a power of the
// bend's radius, and limit and power are taken from a grid over what was counted on.
//
// Ribs of one build are alike, so where builds differ more than chance would, every rib
// counts for less by as much (Pearson's chi-square over its degrees of freedom).
func breaksOf(builds []*feedback.Build, worth float64) *Breaks {
	b := &Breaks{Before: BreakLimit, Worth: worth, Apart: 1}
	var all []broke
	for i, one := range builds {
		ribs := one.All(feedback.Rib)
		for _, l := range ribs {
			all = append(all, broke{i, l.Drawn, l.Found > 0})
		}
		if len(ribs) > 0 {
			b.Builds++
		}
	}
	if len(all) == 0 {
		return nil
	}
	b.Bent = len(all)
	for _, o := range all {
		if o.yes {
			b.Broken++
		}
	}
	g := grid{all: all, worth: math.Max(worth, 0.1)}
	limit, steep := g.settle(1)
	b.Apart = g.apart(limit.Is, steep)
	b.Limit, b.Steep = g.settle(b.Apart)
	b.rows(all)
	b.builders(all)
	return b
}

type grid struct {
	all   []broke
	worth float64
}

// share is the chance that a rib of a bend breaks.
func share(ratio, limit, steep float64) float64 {
	return 1 / (1 + (1-breakShare)/breakShare*math.Pow(ratio/limit, steep))
}

// settle walks the grid; ribs count for 1/apart each.
func (g grid) settle(apart float64) (limit pool.Interval, steep float64) {
	wide := breakDoubt * math.Sqrt(5/g.worth)
	// Ribs of one bend count together: a boat has few.
	type tally struct{ ratio, bent, broken float64 }
	var bends []tally
	at := map[float64]int{}
	for _, o := range g.all {
		k, met := at[o.ratio]
		if !met {
			k = len(bends)
			at[o.ratio] = k
			bends = append(bends, tally{ratio: o.ratio})
		}
		bends[k].bent++
		if o.yes {
			bends[k].broken++
		}
	}
	logs := [breakPoints][breakPoints]float64{}
	most := math.Inf(-1)
	point := func(k int) float64 { return 4 * (2*float64(k)/(breakPoints-1) - 1) }
	odds := math.Log(breakShare / (1 - breakShare))
	for i := range breakPoints {
		for j := range breakPoints {
			u, v := point(i), point(j)
			at, power := math.Log(BreakLimit)+wide*u, breakSteep*math.Exp(steepDoubt*v)
			sum := 0.0
			for _, t := range bends {
				x := odds - power*(math.Log(t.ratio)-at)
				sum += t.broken*x - t.bent*softplus(x)
			}
			logs[i][j] = sum/apart - u*u/2 - v*v/2
			most = math.Max(most, logs[i][j])
		}
	}
	var of [breakPoints]float64
	all := 0.0
	for i := range breakPoints {
		for j := range breakPoints {
			w := math.Exp(logs[i][j] - most)
			of[i] += w
			all += w
			steep += w * breakSteep * math.Exp(steepDoubt*point(j))
		}
	}
	steep /= all
	mean := 0.0
	for i, w := range of {
		mean += w / all * point(i)
	}
	value := func(u float64) float64 { return BreakLimit * math.Exp(wide*u) }
	under := func(p float64) float64 { // the grid as a row of even steps about its points
		sum, step := 0.0, point(1)-point(0)
		for i, w := range of {
			if next := sum + w/all; next >= p {
				return point(i) + step*((p-sum)/(next-sum)-0.5)
			} else {
				sum = next
			}
		}
		return point(breakPoints - 1)
	}
	return pool.Interval{Is: value(mean), Low: value(under(0.05)), High: value(under(0.95))}, steep
}

// softplus is ln(1 + e^x) without overflow.
func softplus(x float64) float64 { return math.Max(x, 0) + math.Log1p(math.Exp(-math.Abs(x))) }

// How many times more than by chance builds are thought to differ, and how many builds that
// counts as: three builds that happen to agree do not make every rib count. Our own choice.
const (
	apartUsual  = 1.5
	apartBuilds = 4.0
)

// apart is Pearson's chi-square of the builds over its degrees of freedom, with what is
// thought beforehand; at least 1.
func (g grid) apart(limit, steep float64) float64 {
	type tally struct{ broken, want, room float64 }
	sums := map[int]*tally{}
	var order []int // of builds, so that sums come out the same
	for _, o := range g.all {
		t := sums[o.build]
		if t == nil {
			t = &tally{}
			sums[o.build] = t
			order = append(order, o.build)
		}
		p := share(o.ratio, limit, steep)
		t.want += p
		t.room += p * (1 - p)
		if o.yes {
			t.broken++
		}
	}
	square, n := 0.0, 0.0
	for _, i := range order {
		if t := sums[i]; t.room > 0 {
			square += (t.broken - t.want) * (t.broken - t.want) / t.room
			n++
		}
	}
	return math.Max(1, (square+apartBuilds*apartUsual)/(math.Max(n-1, 0)+apartBuilds))
}

// rows counts ribs by their bend.
func (b *Breaks) rows(all []broke) {
	edges := []float64{0, 10, 13, 16, 20, 26, math.Inf(1)}
	for i := range len(edges) - 1 {
		row := BreakRow{From: edges[i], To: edges[i+1]}
		for _, o := range all {
			if o.ratio < row.From || o.ratio >= row.To {
				continue
			}
			row.Bent++
			row.Now += share(o.ratio, b.Limit.Is, b.Steep)
			if o.yes {
				row.Broken++
			}
		}
		if row.Bent > 0 {
			row.Now /= float64(row.Bent)
			b.Rows = append(b.Rows, row)
		}
	}
}

// builders draws the shares that builders break together, on the scale of arcs on which
// each is known as well as its ribs are many: one over four times their number.
//
// Source: M. F. Freeman, J. W. Tukey, Ann. Math. Statist. 21 (1950).
func (b *Breaks) builders(all []broke) {
	bent, broken := map[int]float64{}, map[int]float64{}
	var order []int
	for _, o := range all {
		if bent[o.build] == 0 {
			order = append(order, o.build)
		}
		bent[o.build]++
		if o.yes {
			broken[o.build]++
		}
	}
	if len(order) < 4 {
		return
	}
	var readings []pool.Reading
	var shares, drawn []float64
	for i, k := range order {
		n, x := bent[k], broken[k]
		arc := (math.Asin(math.Sqrt(x/(n+1))) + math.Asin(math.Sqrt((x+1)/(n+1)))) / 2
		readings = append(readings, pool.Reading{Value: arc, Side: i, Unit: -1, Known: 1 / (4*n + 2)})
		shares = append(shares, x/n)
	}
	f, ok := pool.New(readings).Of()
	if !ok {
		return
	}
	for i := range order {
		s := math.Sin(math.Max(f.Drawn(i), 0))
		drawn = append(drawn, s*s)
	}
	b.Spread = &Spread{slices.Min(shares), slices.Max(shares), slices.Min(drawn), slices.Max(drawn)}
}
