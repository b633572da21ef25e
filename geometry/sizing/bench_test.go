package sizing

import (
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing/family"
)

func benchCase(b testing.TB, name string) *Case {
	b.Helper()
	f, err := family.Shipped(name)
	if err != nil {
		b.Fatal(err)
	}
	brief := DefaultBrief()
	brief.Title = "Bench"
	for range f.Seats {
		brief.Crew = append(brief.Crew, Paddler{Person: body.Person{Weight: 70, Stature: 1700}, Posture: family.Either})
	}
	return settledCase(b, f, brief)
}

// BenchmarkEvaluation is one boat judged, as a search does it hundreds of times:
// formulas, hull, flotation at the load, GM and reach. The goal is 2,000 boats a second on
// one core of an AMD EPYC. It floats the same boat over and over from where it lies, which
// is some 2 % less work than a search has, whose boats differ a little.
func BenchmarkEvaluation(b *testing.B) { evaluate(b, func(*Case) error { return nil }) }

// BenchmarkLever is the same with how the boat stands; the goal is 800 boats a second.
func BenchmarkLever(b *testing.B) { evaluate(b, (*Case).stand) }

func evaluate(b *testing.B, stand func(*Case) error) {
	for _, name := range family.Names() {
		c := benchCase(b, name)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				found, err := c.round()
				if err != nil {
					b.Fatal(err)
				}
				c.found = found
				if err := stand(c); err != nil {
					b.Fatal(err)
				}
				if err := c.run.Work(nil); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "boats/s")
		})
	}
}

// BenchmarkSettle is a brief settled from the guesses on.
func BenchmarkSettle(b *testing.B) {
	c := benchCase(b, "solo")
	for b.Loop() {
		c.forget()
		if err := c.Settle(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFinish makes the parts of a settled boat.
func BenchmarkFinish(b *testing.B) {
	c := benchCase(b, "solo")
	for b.Loop() {
		if _, err := c.Finish(); err != nil {
			b.Fatal(err)
		}
	}
}
