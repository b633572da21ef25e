package sizing

import (
	"fmt"
	"strings"
	"testing"
)

func class(t *testing.T, text string) []Builder {
	t.Helper()
	all, err := ReadClass(strings.NewReader(text), DefaultBrief(), "pack")
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return all
}

// TestReadClass reads one builder written in the ways that spreadsheets of several
// countries write one.
func TestReadClass(t *testing.T) {
	const want = "Ann Lee, pack, 62.5 kg, 1685 mm, span 0, gear 12.5 kg"
	for name, text := range map[string]string{
		"units in cells":      "name,weight,stature,gear\nAnn Lee,62.5 kg,168.5 cm,12.5 kg\n",
		"units in header":     "name,weight_kg,stature_cm,gear_kg\nAnn Lee,62.5,168.5,12.5\n",
		"spaces in header":    "Name, Weight kg, Stature cm, Gear kg\nAnn Lee, 62.5, 168.5, 12.5\n",
		"semicolons":          "name;weight_kg;stature_cm;gear_kg\nAnn Lee;62,5;168,5;12,5\n",
		"tabs":                "name\tweight_kg\tstature_m\tgear_kg\nAnn Lee\t62,5\t1,685\t12,5\n",
		"quotes":              "name,weight_kg,stature_cm,gear_kg\n\"Ann Lee\",\"62,5\",\"168,5\",\"12,5\"\n",
		"byte order mark":     "\uFEFFname,weight_kg,stature_cm,gear_kg\r\nAnn Lee,62.5,168.5,12.5\r\n",
		"own unit in cell":    "name,weight_lb,stature_cm,gear_kg\nAnn Lee,62.5 kg,1685 mm,12500 g\n",
		"columns about":       "gear_kg,stature_cm,name,use,weight_kg\n12.5,168.5,Ann Lee,pack,62.5\n",
		"empty rows":          "name,weight_kg,stature_cm,gear_kg\n\n,,,\nAnn Lee,62.5,168.5,12.5\n,,,\n",
		"remarks":             "# spring course\nname,weight_kg,stature_cm,gear_kg\nAnn Lee,62.5,168.5,12.5\n",
		"column without name": "name,weight_kg,stature_cm,gear_kg,\nAnn Lee,62.5,168.5,12.5,\n",
	} {
		t.Run(name, func(t *testing.T) {
			all := class(t, text)
			if len(all) != 1 || all[0].Fault != "" {
				t.Fatalf("%+v", all)
			}
			b := all[0]
			p := b.Brief.Crew[0]
			got := fmt.Sprintf("%s, %s, %.4g kg, %.5g mm, span %g, gear %.4g kg", b.Name, b.Use, p.Weight, p.Stature, p.Span, b.Brief.Gear)
			if got != want {
				t.Errorf("got  %s\nwant %s", got, want)
			}
		})
	}
}

// TestReadClassRows has good rows between bad ones.
func TestReadClassRows(t *testing.T) {
	all := class(t, `name,use,weight_kg,stature_cm,sex,posture,partner_weight_kg,partner_stature_cm,waters
Ann,tandem,62,168,f,kneeling,80,178,open
,pack,62,168,,,,,
Bob,pack,,168,,,,,
Cid,pack,62,1.68,,,,,
Dan,pack,sixty,168,,,,,
Eve,pack,62,168,x,,,,
Fay,pack,62,168,,,80,,
Gus,pack,62,168,,,,,,,
"Hal ""the tall""",pack,62,5' 6",,,,,
Ida,pack,62,"5' 6""",,,,,
`)
	wants := []string{"", "has no name", "a paddler of 0 kg; accepted", "a stature of 16.8 mm", `weight: "sixty`, `sex: "x"; accepted: woman, man`,
		"partner: a stature of 0 mm", "has 11 cells under 9 columns", "a quote stands where none should", ""}
	if len(all) != len(wants) {
		t.Fatalf("%d rows, want %d: %+v", len(all), len(wants), all)
	}
	for i, want := range wants {
		if b := all[i]; want == "" && b.Fault != "" || !strings.Contains(b.Fault, want) || b.Line != i+2 {
			t.Errorf("line %d: %q, want line %d and %q", b.Line, b.Fault, i+2, want)
		}
	}
	if b := all[0]; len(b.Brief.Crew) != 2 || b.Brief.Waters != "open" || b.Brief.Crew[1].Weight != 80 {
		t.Errorf("%+v", all[0])
	}
}

func TestReadClassRefuses(t *testing.T) {
	for name, row := range map[string]struct{ text, want string }{
		"empty":       {"", "is empty"},
		"no rows":     {"name,weight,stature\n", "has a header and no rows"},
		"no weight":   {"name,stature\nAnn,168 cm\n", `has no column "weight"`},
		"unknown":     {"name,weight,stature,shoe\nAnn,1 kg,1 m,9\n", `has a column "shoe"; accepted: name, use`},
		"twice":       {"name,weight,stature,weight_kg\n", `has two columns "weight"`},
		"no text":     {"name,weight\x00", "is no UTF-8 text"},
		"latin":       {"name,weight,stature\nJos\xe9,60 kg,170 cm\n", "is no UTF-8 text"},
		"huge":        {strings.Repeat("name,weight,stature\n", 1<<20), "is larger than 16 MB"},
		"many rows":   {"name,weight,stature\n" + strings.Repeat("a,60 kg,170 cm\n", 20002), "has more than 20000 rows"},
		"open quotes": {"\"name,weight,stature\n", "a quote stands where none should"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := ReadClass(strings.NewReader(row.text), DefaultBrief(), "pack")
			if err == nil || !strings.Contains(err.Error(), row.want) {
				t.Errorf("%v, want %q", err, row.want)
			}
		})
	}
	// Ten thousand rows are read.
	if all := class(t, "name,weight,stature\n"+strings.Repeat("a,60 kg,170 cm\n", 10000)); len(all) != 10000 || all[9999].Fault != "" {
		t.Errorf("%d rows", len(all))
	}
}

func TestParsePaddler(t *testing.T) {
	for text, want := range map[string]string{
		"62 kg, 168 cm":                           "62 kg 1680 mm span 0  either",
		"168cm,62kg":                              "62 kg 1680 mm span 0  either",
		`137 lb, 5'-6", woman, kneeling`:          "62.14 kg 1676 mm span 0 woman kneeling",
		"80 kg, 1.80 m, man, sitting, span 72 in": "80 kg 1800 mm span 1829 man sitting",
	} {
		p, err := ParsePaddler(text)
		got := fmt.Sprintf("%.4g kg %.4g mm span %.4g %s %s", p.Weight, p.Stature, p.Span, p.Sex, p.Posture)
		if err != nil || got != want {
			t.Errorf("%s: %q %v, want %q", text, got, err, want)
		}
		if again, err := ParsePaddler(p.String()); again != p {
			t.Errorf("%s is written %q, which is read as %+v (%v)", text, p, again, err)
		}
	}
	for text, want := range map[string]string{
		"": "nothing stands between two commas", "62 kg": "has no stature", "168 cm": "has no weight", "62,5 kg, 168 cm": "is a plain number",
		"62 kg, 168 cm, 170 cm": "comes after another of its kind", "62 kg, 168 cm, tall": `"tall" is no number`, "5 kg, 168 cm": "a paddler of 5 kg",
		"62 kg, 168 mm": "a stature of 168 mm", "62 kg, 168 cm, span 3 m": "an arm span of 3000 mm", "NaN kg, 168 cm": "is no number",
		strings.Repeat("x", 300): "is too long",
	} {
		if _, err := ParsePaddler(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// FuzzReadClass: whatever a table holds, it is refused or read without a panic, and
// every row without a fault has a crew that can be sized.
func FuzzReadClass(f *testing.F) {
	f.Add("name,weight,stature\na,60 kg,170 cm\n")
	f.Add("name,weight,stature\n0\"000")
	f.Add("name;weight_kg;stature_cm\n\"a;b\";60,5;170\n")
	f.Fuzz(func(t *testing.T, text string) {
		all, err := ReadClass(strings.NewReader(text), DefaultBrief(), "pack")
		if err != nil {
			return
		}
		for _, b := range all {
			if b.Fault == "" && b.Brief.Crew[0].Check() != nil {
				t.Fatalf("%+v", b)
			}
		}
	})
}
