package pack_test

import (
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"syscall"
	"testing"

	"ribwright/geometry"
	"ribwright/layout/plate/pack"
)

type instance struct {
	StripHeight float64 `json:"strip_height"`
	Pieces      []struct {
		Count    int
		TurnsDeg []float64 `json:"turns_deg"`
		Outline  [][2]float64
	}
}

func load(t testing.TB, name string) (pack.Task, float64) {
	b, err := os.ReadFile("testdata/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	var in instance
	if err := json.Unmarshal(b, &in); err != nil {
		t.Fatal(err)
	}
	var out pack.Task
	area := 0.0
	for _, p := range in.Pieces {
		var q pack.Part
		for _, c := range p.Outline[:len(p.Outline)-1] {
			q.Outer = append(q.Outer, geometry.Pt(c[0], c[1]))
		}
		a := 0.0
		for i, c := range q.Outer {
			a += c.Cross(q.Outer[(i+1)%len(q.Outer)]) / 2
		}
		if a < 0 {
			a = -a
		}
		for _, d := range p.TurnsDeg {
			q.Turns = append(q.Turns, int(d)*pack.Compass/360)
		}
		for range p.Count {
			out.Parts = append(out.Parts, q)
			area += a
		}
	}
	out.Room = pack.Room{W: 1e9, H: in.StripHeight, Strip: true}
	return out, area
}

func user() float64 {
	var u syscall.Rusage
	syscall.Getrusage(0, &u)
	return float64(u.Utime.Sec) + float64(u.Utime.Usec)/1e6
}

func TestTable(t *testing.T) {
	steps, _ := strconv.Atoi(os.Getenv("STEPS"))
	seeds, _ := strconv.Atoi(os.Getenv("SEEDS"))
	all, secs := 0.0, 0.0
	names := []string{"fu", "jakobs1", "mao", "marques", "dagli", "shapes1"}
	for _, name := range names {
		task, area := load(t, name)
		task.Steps = steps
		mean, t0 := 0.0, user()
		for seed := range seeds {
			task.Seed = uint64(seed + 1)
			n, ok := pack.Close(task)
			if !ok {
				t.Fatal(name)
			}
			mean += area / n.W / n.H / float64(seeds)
		}
		dt := (user() - t0) / float64(seeds)
		secs += dt / 6
		all += mean / 6
		fmt.Printf("%-8s %.4f  %.2f s\n", name, mean, dt)
	}
	fmt.Printf("mean %.4f  %.2f s\n", all, secs)
}
