package job

import (
	"errors"
	"strings"
	"testing"
)

// FuzzAsk: any text in any field of any verb is accepted or refused in one line with the
// field's name, and what is accepted is written as it can be read again.
func FuzzAsk(f *testing.F) {
	all := Asked()
	for v := range all {
		for i := range all[v].New().Fields() {
			for _, text := range []string{"", "0", "true", "80 kg, 1.8 m", "70kg,60kg:seat-1,25kg:child@-200mm", "letter", "beam=680mm..780mm/20mm", "20mm=4x8", "1g", "0.0001 g", "22 lb", "-1", "1e309", "\u202e\x00"} {
				f.Add(uint8(v), uint8(i), text)
			}
		}
	}
	f.Fuzz(func(t *testing.T, v, i uint8, text string) {
		verb := all[int(v)%len(all)]
		fields := verb.New().Fields()
		if len(fields) == 0 {
			return
		}
		name := fields[int(i)%len(fields)].Name
		r, err := Ask(verb.Name, nil, [2]string{name, text})
		if err != nil {
			var m *Misuse
			if !errors.As(err, &m) || len(m.Fields) != 1 || m.Fields[0] != name || strings.ContainsAny(err.Error(), "\n\r") {
				t.Fatalf("%s --%s %q: %v, want one line that names the field", verb.Name, name, text, err)
			}
			return
		}
		said := valueOf(r, name)
		again, err := Ask(verb.Name, nil, [2]string{name, said})
		if said == "" { // none, as the default
			return
		}
		if err != nil || valueOf(again, name) != said {
			t.Fatalf("%s --%s %q is written %q, which is read as %q, %v", verb.Name, name, text, said, valueOf(again, name), err)
		}
	})
}

func valueOf(r Request, name string) string {
	for _, f := range r.Fields() {
		if f.Name == name {
			return f.Value.String()
		}
	}
	return ""
}
