package job

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/shop/fan"
	"ribwright/geometry/sizing"
	"ribwright/render/rendertest"
)

const fanBuilders = `name,use,weight_kg,stature_cm,waters
Ann,pack,58,164,sheltered
Bob,pack,74,178,sheltered
Cid,pack,66,170,sheltered
Dan,pack,80,183,sheltered
Eve,pack,61,168,sheltered
Fay,pack,70,172,open
`

// TestFanBoards: a class that asks for boards gets one for builders who share it and is
// told who does not; every file has a name that was announced, so that somebody's own is
// never in its way unseen. Without the wish no file tells of a board.
func TestFanBoards(t *testing.T) {
	asked := classOf(t, "--loft=false", "--book=false", "--fan-board=true")
	r, err := asked.Do(inMemory(fanBuilders))
	if err != nil {
		t.Fatal(err)
	}
	course, err := asked.Read(inMemory(fanBuilders))
	if err != nil {
		t.Fatal(err)
	}
	told := ""
	for _, o := range r.Outputs {
		if OfCourse(o.Name) && !slices.Contains(course.Names(), o.Name) {
			t.Errorf("%s was not announced: %q", o.Name, course.Names())
		}
		if o.Name == boardsTold {
			told = string(written(t, o))
		}
	}
	for _, want := range []string{"Pack, sheltered water, average skill, section 1 of 3", "Read on the board, and the own loft", "On no board", "nobody else has a boat of its"} {
		if !strings.Contains(told, want) {
			t.Errorf("%q is not told in:\n%s", want, told)
		}
	}
	plain, err := classOf(t, "--loft=false", "--book=false").Do(inMemory(fanBuilders))
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range plain.Outputs {
		if strings.Contains(o.Name, "fan-board") {
			t.Errorf("%s without the wish for boards", o.Name)
		}
	}
}

// TestFanBoardForCutter measures the cutter's file: each single ray of the board lies in it
// as one line with the run and the direction that its numbers give; a lane's scale is the
// same for all, so that runs are as far from each other as the numbers say.
func TestFanBoardForCutter(t *testing.T) {
	r, err := classOf(t, "--loft=false", "--book=false", "--fan-board=true").Do(inMemory(fanBuilders))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	for _, o := range r.Outputs {
		if OfCourse(o.Name) {
			files[o.Name] = written(t, o)
		}
	}
	d, err := rendertest.ReadDXF(files["course-fan-board-1-cut.dxf"])
	if err != nil {
		t.Fatal(err)
	}
	var n struct {
		Rib  [2]float64 `json:"midship_rib_mm"`
		Half [2]float64 `json:"half_length_mm"`
		Rays []struct {
			Mark   string     `json:"mark"`
			Net    bool       `json:"net"`
			Narrow [2]float64 `json:"narrowest_mm"`
		} `json:"rays"`
	}
	if err := json.NewDecoder(bytes.NewReader(files["course-fan-board-1-numbers.json"])).Decode(&n); err != nil {
		t.Fatal(err)
	}
	slopes := func() (out []float64) { // of lines that lean, run over rise
		for _, e := range d.On("MARK") {
			pts := e.Outline.Corners()
			if len(pts) != 2 {
				continue
			}
			dx, dy := pts[1].X-pts[0].X, pts[1].Y-pts[0].Y
			if math.Abs(dx) > 1 && math.Abs(dy) > 1 {
				out = append(out, math.Abs(dx/dy), math.Abs(dy/dx)) // it may lie turned
			}
		}
		return out
	}()
	for _, ray := range n.Rays {
		times, read := 0.3, n.Rib // mm of height for a mm of reading, as drawn
		if strings.HasPrefix(ray.Mark, "mortise") {
			times, read = 0.5, n.Half
		}
		want := (ray.Narrow[1] - ray.Narrow[0]) / (read[1] - read[0]) / times
		if ray.Net || math.Abs(ray.Narrow[1]-ray.Narrow[0]) < 1 || (read[1]-read[0])*times < 30 {
			continue
		}
		if !slices.ContainsFunc(slopes, func(s float64) bool { return math.Abs(s-math.Abs(want)) < 0.003 }) {
			t.Errorf("no line for the cutter runs as the ray of the %s, %.4f over its rise", ray.Mark, want)
		}
	}
	if len(slopes) < 2*len(n.Rays)-20 {
		t.Errorf("%d leaning lines for %d rays", len(slopes)/2, len(n.Rays))
	}
}

// TestBroughtOntoBoard: what is told to bring a builder onto a board does so. The same body
// is sized as much wider as is told, and its marks are then read on a board with the others',
// none of whom falls off.
func TestBroughtOntoBoard(t *testing.T) {
	const table = "name,use,weight_kg,stature_cm,gear_kg\nAnn,pack,58,164,5\nCid,pack,66,170,5\nBob,pack,74,178,5\n"
	asked := classOf(t, "--loft=false", "--book=false", "--fan-board=true")
	r, err := asked.Do(inMemory(table))
	if err != nil {
		t.Fatal(err)
	}
	told := ""
	for _, o := range r.Outputs {
		if o.Name == boardsTold {
			told = strings.Join(strings.Fields(string(written(t, o))), " ")
		}
	}
	_, cost, there := strings.Cut(told, "section 1 of 3: ")
	var wider float64
	if _, err := fmt.Sscanf(cost, "%f mm more beam", &wider); err != nil || !there {
		t.Fatalf("no cost of beam is told: %q", told)
	}
	course, err := asked.Read(inMemory(table))
	if err != nil {
		t.Fatal(err)
	}
	var boats []fan.Boat
	for i, b := range course.builders {
		s := sizing.Sharing{}
		if i == 2 {
			s.Wider = wider
		}
		a, err := sizing.SizeAlike(course.families["pack"], b.Brief, s)
		if err != nil {
			t.Fatal(err)
		}
		boat, err := fan.Of(b.Name, a.Frame)
		if err != nil {
			t.Fatal(err)
		}
		boats = append(boats, boat)
	}
	if board, err := fan.Make(boats); err != nil || len(board.Refused) > 0 || len(board.On) != 3 {
		t.Errorf("%.0f mm wider: %v, %+v", wider, err, board)
	}
}
