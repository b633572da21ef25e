// Package fabric knows the cloth of a skin and its coating: what each fiber weighs and
// how it is drawn taut, how much coating bare cloth drinks, and what a film of it
// covers and weighs. Units: mm, g/m2 for cloth and coating, L/m2, N/mm.
package fabric

// Fiber is what a cloth is woven of. Polyester is the zero Fiber.
type Fiber int

// The fibers.
const (
	Polyester Fiber = iota
	Nylon
	Cotton
)

// Fibers lists them.
func Fibers() []Fiber { return []Fiber{Polyester, Nylon, Cotton} }

// String returns the fiber as a design file has it.
func (f Fiber) String() string { return [...]string{"polyester", "nylon", "cotton"}[f] }

// Density of the fiber itself, g/cm3. Textile property tables: polyester 1.38, nylon
// 1.14, cotton 1.54.
func (f Fiber) Density() float64 { return [...]float64{1.38, 1.14, 1.54}[f] }

// Regain is the water that dry cloth takes from damp air, as a share of its mass.
// Textile property tables: polyester 0.4 %, nylon 4.5 %, cotton 8.5 %.
func (f Fiber) Regain() float64 { return [...]float64{0.004, 0.045, 0.085}[f] }

// packed is the share of a woven cloth's own volume that is fiber. From memory:
// polyester of 271 g/m2 is about 0.45 mm thick, nylon of 407 g/m2 about 0.62 mm, cotton
// duck of 492 g/m2 about 0.7 mm.
func (f Fiber) packed() float64 { return [...]float64{0.44, 0.58, 0.45}[f] }

// Thickness of bare cloth that weighs so many g/m2, mm: its fiber and the gaps in it.
func (f Fiber) Thickness(cloth float64) float64 {
	return cloth / 1000 / f.Density() / f.packed()
}

// Voids is the room between the fibers of such a cloth, L/m2, which the first coat fills.
func (f Fiber) Voids(cloth float64) float64 { return f.Thickness(cloth) * (1 - f.packed()) }

// Pull is how far cloth is drawn when it is fastened, as a share of what it covers.
// Polyester is laid on smooth, for heat does the rest; nylon is drawn hard, damp,
// because it gives; cotton is drawn firm and shrinks when it is wet. From memory.
func (f Fiber) Pull() float64 { return [...]float64{0.005, 0.02, 0.01}[f] }

// Range is a low, a likely and a high value.
type Range struct{ Low, Likely, High float64 }

// Shrink is how much slack along the boat a cloth takes up when it is drawn taut, as a
// share: polyester some 5 % at 120 C and up to 10 % at 177 C of loom-state cloth, less of
// cloth that was heat-set; nylon 1 to 4 %; cotton 2 to 4 % when wet. From memory, the low
// end.
func (f Fiber) Shrink() float64 { return [...]float64{0.05, 0.01, 0.02}[f] }

// Tension is how hard a finished skin of the fiber pulls, N for each mm along the boat.
// From memory: nobody has published measured skins; a boat's own may be off by two or
// three times.
func (f Fiber) Tension() Range {
	return [...]Range{{0.15, 0.3, 0.6}, {0.1, 0.3, 0.5}, {0.05, 0.2, 0.5}}[f]
}

// Ironing is what heat does to a cloth, in the order of the passes, degrees C; Melts
// is where the fiber melts or scorches.
type Ironing struct {
	Steps []float64
	Most  float64 // never hotter; 0 for no iron at all
	Melts float64
}

// Ironing returns the steps of the iron. Polyester: 120 to 177 C in steps and stop
// there, from memory of common practice on light aircraft; melting from textile
// property tables (polyester 250 to 260 C, nylon 6 225 C, the lower of the nylons),
// cotton scorches from about 200 C, from memory.
func (f Fiber) Ironing() Ironing {
	switch f {
	case Nylon:
		return Ironing{Most: 150, Melts: 225}
	case Cotton:
		return Ironing{Melts: 200}
	}
	return Ironing{Steps: []float64{120, 150, 177}, Most: 177, Melts: 250}
}
