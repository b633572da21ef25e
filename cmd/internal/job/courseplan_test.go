package job

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/sizing"
)

// TestCoursePlan reads the plan of a course as its teacher does, and walks over its quarter
// hours: one at the boiler and one at the saw, no more at benches than there are, nobody at two
// things, no steaming left for the night, and the order of the craft: gunwales glued before they
// are bent, ribs pegged before keel and stringers, oil before cloth (common practice).
func TestCoursePlan(t *testing.T) {
	const three = "name,use,weight_kg,stature_cm,skill\n=Ann,pack,62,168,beginner\nBob,pack,80,183,experienced\nCid,pack,72,175,average\n"
	course, err := classOf(t, "--loft=false", "--days", "11", "--hours-a-day", "8", "--benches", "2").Read(inMemory(three))
	if err != nil {
		t.Fatal(err)
	}
	var all []sizing.Outcome
	for i := range course.Len() {
		all = append(all, course.Make(i, func(Built) (sizing.Status, error) { return sizing.Kept, nil }))
	}
	_, files := course.Book(all)
	outs, err := files()
	if err != nil || len(outs) != 3 {
		t.Fatal(len(outs), err)
	}
	rows, err := csv.NewReader(bytes.NewReader(written(t, outs[1]))).ReadAll()
	if err != nil || len(rows) < 40 {
		t.Fatal(len(rows), err)
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	at, when, sets := map[string]int{}, map[string][2]int{}, map[string]int{}
	for _, r := range rows[1:] {
		if sets[r[0]]++; r[0] != "course" {
			if r[1] != "" || number(r[8]) <= 0 {
				t.Errorf("%q", r)
			}
			continue
		}
		from, to := 32*(int(number(r[1]))-1)+int(4*number(r[2])), 32*(int(number(r[3]))-1)+int(4*number(r[4]))
		if strings.HasPrefix(r[6], "steam") && r[1] != r[3] || math.Abs(float64(to-from)-4*number(r[8])) > 1.3 {
			t.Errorf("%q is %d quarters", r, to-from)
		}
		when[r[5]+": "+r[6]] = [2]int{from, to}
		for q := from; q < to; q++ {
			for _, of := range []string{r[5], r[7]} {
				key := of + " " + strconv.Itoa(q)
				if at[key]++; at[key] > map[string]int{"bench": 2}[of] && at[key] > 1 {
					t.Fatalf("%q: %d at %s", r, at[key], of)
				}
			}
		}
	}
	if sets["before"] == 0 || sets["later"] == 0 {
		t.Errorf("%v: eleven days are too few for all", sets)
	}
	for _, who := range []string{"'=Ann", "Bob", "Cid"} {
		for _, pair := range [][2]string{{"steam and bend the first rib", "steam and bend the ribs"}, {"steam and bend the ribs", "fit, true and peg the ribs"}, {"fit, true and peg the ribs", "lash the frame"}} {
			first, then := when[who+": "+pair[0]], when[who+": "+pair[1]]
			if first[1] == 0 || then[0] < first[1] || pair[1] != "lash the frame" && then[0]/32 == (first[1]-1)/32 {
				t.Errorf("%s: %q %v, %q %v: a night lies between", who, pair[0], first, pair[1], then)
			}
		}
	}
}
