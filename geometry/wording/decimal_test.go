package wording

import (
	"strings"
	"testing"
)

func TestDecimals(t *testing.T) {
	for text, want := range map[string]string{
		"80,kg":                         "",
		"80,5 kg, 180 cm":               "; for decimals write 80.5, not 80,5",
		"80kg,1,80m":                    "; for decimals write 1.80, not 1,80",
		"0,5":                           "; for decimals write 0.5, not 0,5",
		"80 kg, 180 cm":                 "",
		"80kg,180cm":                    "",
		"5,":                            "",
		",5":                            "",
		",":                             "",
		"":                              "",
		"a,5":                           "",
		strings.Repeat("1", 200) + ",5": "",
	} {
		if got := Decimals(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
