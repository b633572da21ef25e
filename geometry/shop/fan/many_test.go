package fan_test

import (
	"fmt"
	"math"
	"os"
	"runtime"
	"strings"
	"sync"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/shop/fan"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
)

func howMany() int {
	if os.Getenv("RIBWRIGHT_LONG") != "" {
		return 200
	}
	return 48
}

// class sizes boats of one family for random bodies, gear, postures and sticks, sheltered
// water and average skill, and parts them by the step of their sections.
func class(t *testing.T, name string, n int) (out [sizing.SectionSteps][]fan.Boat, frames map[string]*frame.Frame) {
	t.Helper()
	f, err := family.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	boats := make([]sizing.Alike, n)
	failed := make([]error, n)
	var work sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		work.Go(func() {
			for i := range next {
				b := sizing.Trying{Family: f}.Body(i)
				b.Waters, b.Skill = family.Sheltered, family.Average
				boats[i], failed[i] = sizing.SizeAlike(f, b, sizing.Sharing{})
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	work.Wait()
	frames = map[string]*frame.Frame{}
	for i, b := range boats {
		if failed[i] != nil {
			t.Fatalf("%s, body %d: %v", name, i, failed[i])
		}
		builder := fmt.Sprintf("body %d", i)
		boat, err := fan.Of(builder, b.Frame)
		if err != nil {
			t.Fatal(err)
		}
		frames[builder] = b.Frame
		out[b.Step] = append(out[b.Step], boat)
	}
	return out, frames
}

// TestBoardsServe: of random bodies of each family, in one water and for one skill, 85 in
// 100 and more find a board. What those read agrees with their own boat's loft, mark by
// mark, both fore and aft; all others are refused by name.
//
// The tolerances are common practice, no source: rib 2 mm, bend 5, stringer 2, mortise 1.
func TestBoardsServe(t *testing.T) {
	for _, name := range family.Names() {
		n, served := howMany(), 0
		steps, frames := class(t, name, n)
		for step, boats := range steps {
			if len(boats) < 2 {
				continue
			}
			board, err := fan.Make(boats)
			if err != nil {
				t.Fatal(err)
			}
			if len(board.On)+len(board.Refused) != len(boats) {
				t.Fatalf("%s: %d boats, %d on and %d off the board", name, len(boats), len(board.On), len(board.Refused))
			}
			served += len(board.On)
			worst := [4]float64{}
			for _, b := range board.On {
				for k, off := range misread(board, frames[b.Builder], b.Reading) {
					worst[k] = math.Max(worst[k], off)
				}
			}
			nets := 0
			for _, r := range board.Rays {
				if r.Net {
					nets++
				}
			}
			t.Logf("%s, step %d: %d of %d on the board, largest errors rib %.2f, bend %.2f, stringer %.2f, mortise %.2f mm; %d nets of %d", name, step, len(board.On), len(boats), worst[0], worst[1], worst[2], worst[3], nets, len(board.Rays))
			for k, most := range []float64{2, 5, 2, 1} {
				if worst[k] > most {
					t.Errorf("%s, step %d: %s read %.2f mm off the loft; accepted: %.0f mm", name, step, fan.Kind(k), worst[k], most)
				}
			}
			for _, off := range board.Refused {
				t.Logf("%s, step %d, %s: %s", name, step, off.Builder, off.Why)
				if !strings.Contains(off.Why, " mm") && !strings.Contains(off.Why, "rib ") {
					t.Errorf("%s, %s: refused without rib or millimeters: %s", name, off.Builder, off.Why)
				}
			}
		}
		if 100*served < 85*n {
			t.Errorf("%s: %d of %d bodies find a board; wanted 85 in 100", name, served, n)
		}
	}
}

// misread is by how much each kind of mark is read off a frame's own, ribs in their whole
// length, mm; +Inf where the board has no ray for one.
func misread(board *fan.Board, f *frame.Frame, at fan.Reading) (worst [4]float64) {
	read := map[fan.Mark]float64{}
	for _, r := range board.Rays {
		read[r.Mark] = board.Read(r, at)
	}
	see := func(m fan.Mark, times, own float64) {
		v, ok := read[m]
		if !ok {
			v = math.Inf(1)
		}
		worst[m.Kind] = math.Max(worst[m.Kind], math.Abs(times*v-own))
	}
	for i, r := range f.Ribs {
		k := int(math.Abs(float64(i - len(f.Ribs)/2)))
		see(fan.Mark{Kind: fan.Length, Rib: k}, 2, r.Length)
		for n, own := range r.BendMarks {
			see(fan.Mark{Kind: fan.Bend, Rib: k, Number: n}, 1, own)
		}
		for n, own := range r.StringerMarks {
			see(fan.Mark{Kind: fan.Stringer, Rib: k, Number: n}, 1, own)
		}
		if k > 0 {
			see(fan.Mark{Kind: fan.Mortise, Rib: k}, 1, math.Abs(f.Gunwale.Mortises[i].FromMidship))
		}
	}
	return worst
}
