package answer

import (
	"fmt"
	"testing"

	"ribwright/cmd/internal/job"
)

// BenchmarkSlider is a slider's way from the message to the answer: the boat redrawn,
// set afloat, stood up and bent.
func BenchmarkSlider(b *testing.B) {
	for i := range b.N {
		To(fmt.Appendf(nil, `{"verb":"look","names":["lake"],"fields":[["hull-beam","%d mm"]]}`, 740+i%50), job.World{Made: job.UsualDate()})
	}
}
