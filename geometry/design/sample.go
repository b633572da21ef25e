package design

import (
	"fmt"
	"strings"
)

// samples are a row of each table that a design may have none of, as a builder would write
// it: a key and its value a line.
func samples() map[string]string {
	return map[string]string{
		"wood":        "name = 'white ash'\ndensity = 640.0\nstiff = 12500.0",
		"stock.board": "species = 'white ash'\nlength = '2400 mm'\nwidth = '150 mm'\nthickness = '25 mm'\ncount = 2",
		"thwart":      "name = 'Thwart'\nkind = 'thwart'\nat = '300 mm'\nspecies = 'white ash'\nwidth = '50 mm'\nwaist = '38 mm'\nthickness = '18 mm'",
		"crew":        "name = 'Paddler'\nmass = 75.0\nposture = 'floor'\nseat = 'floor'\nat = '-100 mm'",
		"gear":        "name = 'Day bag'\nmass = 6.0\nat = '500 mm'",
	}
}

// docs are the descriptions of all keys, by their names.
func docs() map[string]string {
	out := map[string]string{}
	for _, k := range Keys() {
		out[k.Name] = k.Doc
	}
	return out
}

// sample is a row of a table as comments: without their marks it can be used as it stands.
// Tables without a sample give nothing.
func sample(table string, docs map[string]string) string {
	text, ok := samples()[table]
	if !ok {
		return ""
	}
	out := "# For example, without the marks before the lines:\n# [[" + table + "]]\n"
	for _, line := range strings.Split(text, "\n") {
		key, _, _ := strings.Cut(line, " ")
		out += fmt.Sprintf("# %-26s # %s\n", line, docs[table+"."+key])
	}
	return out
}
