package design

import (
	"errors"
	"strings"
	"testing"
	"unicode"

	"ribwright/geometry/wording"
)

// faultOf decodes what must be refused and checks what holds for every fault:
// no design, one line, no control characters, not endless.
func faultOf(t *testing.T, file string) *wording.Fault {
	t.Helper()
	d, err := decode(file)
	var f *wording.Fault
	if d != nil || !errors.As(err, &f) {
		t.Fatalf("Decode = %v, %v, want no design and a *wording.Fault", d, err)
	}
	s := f.Error()
	if f.Text == "" || len(s) > 2500 {
		t.Errorf("the message has %d bytes: %.80q", len(s), s)
	}
	if i := strings.IndexFunc(s, unicode.IsControl); i >= 0 {
		t.Errorf("the message holds the control character %q: %q", s[i], s)
	}
	return f
}

// slip is one change made in the river design, and the whole message that the
// builder reads.
type slip struct{ name, old, with, want string }

func readSlips(t *testing.T, slips []slip) {
	t.Helper()
	river := text(t, "river")
	for _, c := range slips {
		t.Run(c.name, func(t *testing.T) {
			if got := faultOf(t, swap(t, river, c.old, c.with)).Error(); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// TestFaultKeys has keys that are no keys, or stand twice.
func TestFaultKeys(t *testing.T) {
	readSlips(t, []slip{
		{"slip in a key", "scarf_slope", "scarf_slop",
			"x.toml:72: gunwale.scarf_slop: no such key; the nearest known key is gunwale.scarf_slope"},
		{"slip in a list of tables", `bottom_turn = "28 deg"`, `botom_turn = "28 deg"`,
			"x.toml:26: hull.section.botom_turn: no such key; the nearest known key is hull.section.bottom_turn"},
		{"slip in a thwart", `waist = "64 mm"`, `wast = "64 mm"`,
			"x.toml:124: thwart.wast: no such key; the nearest known key is thwart.waist"},
		{"slip in a table", "[breasthook]", "[breastook]",
			"x.toml:94: breastook: no such key; the nearest known key is breasthook"},
		{"key in the wrong table", "[ribs]\n", "[ribs]\nscarfs = []\n",
			"x.toml:75: ribs.scarfs: no such key; the nearest known key is gunwale.scarfs"},
		{"title under a table", "cloth = 407", "title = \"River\"",
			"x.toml:102: skin.title: no such key; the nearest known key is title, which stands at the top, before the first table"},
		{"capital", `depth = "340 mm"`, `Depth = "340 mm"`,
			"x.toml:10: hull.Depth: no such key; the nearest known key is hull.depth"},
		{"key in quotes", `depth = "340 mm"`, `"hull.depth" = "340 mm"`,
			`x.toml:10: hull."hull.depth": no such key; the nearest known key is hull.depth`},
		{"key twice", "beam = \"850 mm\"\n", "beam = \"850 mm\"\nbeam = \"851 mm\"\n", "x.toml:10: hull.beam: is given twice, first on line 9; keep one"},
		{"table twice", "[keel]\n", "[gunwale]\n", "x.toml:83: gunwale: is begun twice, first on line 61; put all its keys there"},
	})
}

// TestFaultKinds has values that are not of the kind their key takes.
func TestFaultKinds(t *testing.T) {
	readSlips(t, []slip{
		{"bare number", `"4900 mm"`, "4900",
			`x.toml:8: hull.length: 4900 has no unit; takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in"`},
		{"bare decimal", `"15 deg"
bilge_radius = "137 mm"`, `15.5
bilge_radius = "137 mm"`,
			`x.toml:32: hull.section.bottom_turn: 15.5 has no unit; takes an angle in quotes with its unit, such as "12 deg"`},
		{"bare number in a list", `["-1480 mm", "1480 mm"]`, "[\"-1480 mm\",\n1480]",
			`x.toml:72: gunwale.scarfs: 1480 has no unit; takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in"`},
		{"bare nan", `"115 mm"`, "nan",
			`x.toml:14: hull.waterline: nan has no unit; takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in"`},
		{"quoted bare number", `"850 mm"`, `"850"`,
			`x.toml:9: hull.beam: length "850": the number has no unit; write mm, cm, m, in, ft or the marks ' and ", as 12 mm`},
		{"true for a length", `"850 mm"`, "true",
			`x.toml:9: hull.beam: takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in", not true`},
		{"date for a length", `"850 mm"`, "2020-01-02",
			`x.toml:9: hull.beam: takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in", not 2020-01-02`},
		{"list for a length", `"850 mm"`, `["850 mm"]`,
			`x.toml:9: hull.beam: takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in", not a list`},
		{"braces for a length", `"850 mm"`, `{ mm = 850 }`,
			`x.toml:9: hull.beam: takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in", not a table`},
		{"number for a title", `"River"`, "5", "x.toml:4: title: takes text in quotes, not 5"},
		{"word for a number", "plies = 3", `plies = "two"`, `x.toml:65: gunwale.plies: takes a whole number, not "two"`},
		{"decimal for a whole number", "plies = 3", "plies = 3.0", "x.toml:65: gunwale.plies: takes a whole number, not 3.0"},
		{"enormous whole number", "plies = 3", "plies = 99999999999999999999",
			"x.toml:65: gunwale.plies: the number is far too large"},
		{"yes", "[hull]\n", "[hull]\nsymmetric = \"yes\"\n", `x.toml:8: hull.symmetric: takes true or false, not "yes"`},
		{"word for a list", "at = [0.21, 0.4, 0.6, 0.8]", `at = "x"`,
			`x.toml:92: stringers.at: takes a list of numbers, such as [0.3, 0.6], not "x"`},
		{"word in a list", "[0.21, 0.4, 0.6, 0.8]", "[0.21,\n\n\"x\"]", `x.toml:94: stringers.at: takes a number, not "x"`},
		{"number for a kind", `"yoke"`, "1", `x.toml:120: thwart.kind: takes "thwart" or "yoke", not 1`},
		{"number for a table", "[skin]\n", "skin = 5\n[skinny]\n",
			"x.toml:100: breasthook.skin: no such key; the nearest known key is skin, which stands at the top, before the first table"},
		{"table for a key", "[keel]\n", "[hull.length]\n",
			`x.toml:83: hull.length: takes a length in quotes with its unit, such as "720 mm" or "28 3/8 in", not a table of its own`},
		{"number for tables", "[hull]\n", "[hull]\nsection = 5\n", "x.toml:8: hull.section: takes tables, each begun with [[ ]], not 5"},
		{"brackets missing", "[stern]", "[[stern]]", "x.toml:52: stern: there is only one; begin it with single brackets, [stern]"},
		{"key through a list", "[hull]\n", "[hull]\nsection.at = \"0 mm\"\n",
			"x.toml:8: hull.section: there may be several; begin each with double brackets, [[hull.section]]"},
	})
}

// TestFaultValues has values that make no sense alone or beside others.
func TestFaultValues(t *testing.T) {
	readSlips(t, []slip{
		{"rib too thick", `thickness = "7 mm"`, `thickness = "12 mm"`,
			"x.toml:77: ribs.thickness: 12 mm is more than half the gunwale width 22 mm; accepted: up to 11 mm"},
		{"out of range", `"4900 mm"`, `"9.2 m"`, "x.toml:8: hull.length: 9200 mm is out of range; accepted: 2000 to 9000 mm"},
		{"zero", `"4900 mm"`, `"0 in"`, "x.toml:8: hull.length: is missing, or 0 mm; accepted: 2000 to 9000 mm"},
		{"missing key", "length = \"4900 mm\"\n", "", "x.toml:7: hull.length: is missing, or 0 mm; accepted: 2000 to 9000 mm"},
		{"missing key in the second section", "bilge_radius = \"137 mm\"\n", "", "x.toml:30: hull.section.bilge_radius: is missing, or 0 mm; accepted: 20 to 1000 mm"},
		{"third section", `flare = "5 deg"`, `flare = "50 deg"`, "x.toml:40: hull.section.flare: 50 deg is out of range; accepted: -30 to 45 deg"},
		{"no turn left", `bottom_turn = "15 deg"`, "topside_curve = \"50 deg\"\nbottom_turn = \"32.5 deg\"",
			"x.toml:33: hull.section.bottom_turn: 32.5 deg, with flare 8 deg and topside_curve 50 deg, makes 90.5 deg and leaves no turn for the bilge; accepted: less than 90 deg together"},
		{"spreaders too near", `at = "1250 mm"`, `at = "-1240 mm"`,
			"x.toml:21: hull.spreader.at: -1240 mm is 10 mm from the one at -1250 mm; accepted: at least 50 mm apart"},
		{"spreader near midship", `at = "1250 mm"`, `at = "49 mm"`,
			"x.toml:21: hull.spreader.at: 49 mm is 49 mm from the one at 0 mm; accepted: at least 50 mm apart"},
		{"symmetric and abaft", "rocker_stern = \"30 mm\"\n", "symmetric = true\n",
			"x.toml:17: hull.spreader.at: -1250 mm is abaft midship in a symmetric design, where it is mirrored by itself; give it forward, positive"},
		{"symmetric with another stern", "rocker_stern = \"30 mm\"\n", "rocker_stern = \"30 mm\"\nsymmetric = true\n",
			"x.toml:13: hull.rocker_stern: 30 mm is not the bow's 40 mm in a symmetric design; leave it out, or set hull.symmetric = false"},
		{"wood", `"white oak"
width`, `"wite oak"
width`, `x.toml:75: ribs.species: species "wite oak" is not known; the nearest are white oak, red oak, European oak`},
		{"no wood", "[ribs]\nspecies = \"white oak\"\n", "[ribs]\n", "x.toml:74: ribs.species: is missing; accepted: the name of a wood, as white ash"},
		{"kind", `"yoke"`, `"bench"`, `x.toml:120: thwart.kind: "bench" is no kind of cross piece; accepted: thwart, yoke`},
		{"no title", `"River"`, `" "`, `x.toml:4: title: is missing; accepted: a name in quotes, as title = "Brook"`},
		{"nan", "scarf_slope = 8", "scarf_slope = nan", "x.toml:72: gunwale.scarf_slope: NaN is out of range; accepted: 5 to 20, 8 to 12 is usual"},
		{"nan in a list", "[0.21, 0.4, 0.6, 0.8]", "[nan]", "x.toml:92: stringers.at: NaN is out of range; accepted: more than 0 (at the keel) and less than 1 (at the gunwale)"},
		{"inf", "cloth = 407", "mass = inf", "x.toml:102: skin.mass: +Inf g/m2 is out of range; accepted: 0 to 5000 g/m2"},
		{"shares out of order", "[0.21, 0.4,", "[0.41, 0.4,", "x.toml:92: stringers.at: 0.4 stands after 0.41; accepted: shares that rise from the keel up"},
	})
}

// TestFaultSyntax has lines that are no TOML. The words before "; the line
// reads" are ours; the line is the builder's.
func TestFaultSyntax(t *testing.T) {
	river := text(t, "river")
	const quotes = `text, lengths and angles stand in quotes, as "850 mm"; a length with an inch mark in single quotes, as '33 1/2"'`
	for _, c := range []struct{ name, line, key, want string }{
		{"no quotes", `beam = 850 mm`, "hull.beam", "something is left over after the value; " + quotes},
		{"no quotes, no space", `beam = 850mm`, "hull.beam", "the value has letters outside quotes; " + quotes},
		{"inch mark in double quotes", `beam = "33 1/2""`, "hull.beam", "something is left over after the value; " + quotes},
		{"word without quotes", `beam = wide`, "hull.beam", "the value begins with something that is neither text nor number; " + quotes},
		{"quotes not closed", `beam = "850 mm`, "hull.beam", "the quotes are not closed on this line; close them with the same mark"},
		{"single quotes not closed", `beam = '850 mm`, "hull.beam", "the quotes are not closed on this line; close them with the same mark"},
		{"curly quotes", `beam = “850 mm”`, "hull.beam", `curly quotes are read only inside straight ones; write "850 mm"`},
		{"colon", `beam: "850 mm"`, "hull.beam", `an = sign must follow the key, as beam = "850 mm"`},
		{"no sign", `beam "850 mm"`, "hull.beam", `an = sign must follow the key, as beam = "850 mm"`},
		{"no value", `beam =`, "hull.beam", "nothing stands after the = sign; give a value"},
		{"backslash", `beam = "c:\boats\850 mm"`, "hull.beam", `in double quotes a \ begins a special letter; write \\ for a plain one, or use single quotes`},
		{"table not closed", `[ribs`, "", "the brackets are not closed; a table begins with [ribs] or [[thwart]]"},
		{"not a key", `= "850 mm"`, "", "a line begins with a key, with a table in brackets, or with # for a comment"},
		{"list not closed", `beam = ["850 mm"`, "", "the list is not closed, here or above, or a comma is missing; write it as [0.3, 0.6]"},
		{"comma missing", `beam = ["850 mm" "1 mm"]`, "hull.beam", "the list is not closed, here or above, or a comma is missing; write it as [0.3, 0.6]"},
		{"comma too many", `beam = ["850 mm",,]`, "hull.beam", "the list has a comma too many; write it as [0.3, 0.6]"},
		{"braces not closed", `beam = { a = 1`, "", "the braces are not closed, here or above, or a comma is missing; better begin a table with [ ] on its own line"},
		{"old letters", "beam = \"850 mm \xe9\"", "hull.beam", "a letter here is not UTF-8; save the file as UTF-8 text"},
		{"bell", "beam = \"850 mm\a\"", "hull.beam", "an invisible control character stands here; delete it"},
		{"stray return", "beam = \"850 mm\"\r# wide", "hull.beam", "a stray carriage return stands here; save the file with ordinary line ends"},
		{"unknown to us", `beam = 0850`, "hull.beam", "cannot be read: integers cannot have leading zeroes"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := faultOf(t, swap(t, river, `beam = "850 mm"`, c.line))
			words, line, _ := strings.Cut(f.Text, "; the line reads: ")
			if words != c.want || f.Key != c.key {
				t.Errorf("got  %s: %s\nwant %s: %s", f.Key, words, c.key, c.want)
			}
			// A list that is never closed is only missed on a later line.
			if line != c.line && f.Line == 9 || f.Line < 9 || f.Line > 10 {
				t.Errorf("names line %d: %q, want line 9: %q", f.Line, line, c.line)
			}
		})
	}
}

// TestFaultFiles has whole files that are no design.
func TestFaultFiles(t *testing.T) {
	all := make([]byte, 0, 256*40)
	for range 40 {
		for b := range 256 {
			all = append(all, byte(b))
		}
	}
	for _, c := range []struct{ name, file, want string }{
		{"empty", "", "x.toml: is empty; a design holds at least a title and the measures of the hull"},
		{"white space", "\uFEFF \r\n\t\n", "x.toml: is empty; a design holds at least a title and the measures of the hull"},
		{"only a comment", "# a boat\n", `x.toml: title: is missing; accepted: a name in quotes, as title = "Brook"`},
		{"only a title", "title = 'x'\n", "x.toml: hull.length: is missing, or 0 mm; accepted: 2000 to 9000 mm"},
		{"2 MB", strings.Repeat("# filler\n", 2<<20/9), "x.toml: is larger than 1 MB, so it is no design file"},
		{"every byte", string(all), "x.toml: is no text file; a design is UTF-8 text"},
		{"zeros", strings.Repeat("\x00", 100), "x.toml: is no text file; a design is UTF-8 text"},
		{"UTF-16", "\xff\xfet\x00i\x00t\x00", "x.toml: is saved as UTF-16; save it as UTF-8 text"},
		{"UTF-16, other end first", "\xfe\xff\x00t\x00i", "x.toml: is saved as UTF-16; save it as UTF-8 text"},
		{"deep lists", "title = " + strings.Repeat("[", 1e5), "x.toml:1: title: brackets stand in brackets too deep for a design; the line reads: title = " + strings.Repeat("[", 52) + "..."},
		{"deep braces", strings.Repeat("hull={", 1e5), "x.toml:1: hull: brackets stand in brackets too deep for a design; the line reads: hull={hull={hull={hull={hull={hull={hull={hull={hull={hull={..."},
		{"deep key", strings.Repeat("a.", 2e5) + "b = 1", "x.toml:1: a: no such key; the nearest known key is seat.at"},
		{"deep table", "[" + strings.Repeat("hull.", 1e5) + "hull]", "x.toml:1: hull.hull: no such key; the nearest known key is hull, which stands at the top, before the first table"},
		{"old line ends", "title = 'x'\rfor = 'y'\r", "x.toml:1: title: a stray carriage return stands here; save the file with ordinary line ends; the line reads: title = 'x' for = 'y'"},
		{"sixty thousand thwarts", strings.Repeat("[[thwart]]\n", 6e4) + "x = 1", "x.toml:60001: thwart.x: no such key; the nearest known key is thwart.at"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := faultOf(t, c.file).Error(); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// TestFaultMissingTables leaves out one table after the other.
func TestFaultMissingTables(t *testing.T) {
	river := text(t, "river")
	for _, c := range []struct{ table, key string }{
		{"hull", "hull.length"}, {"bow", "bow.forefoot_radius"}, {"stern", ""}, {"gunwale", "gunwale.species"},
		{"ribs", "ribs.species"}, {"keel", "keel.species"}, {"stringers", "stringers.species"},
		{"breasthook", "breasthook.species"}, {"skin", ""},
	} {
		t.Run(c.table, func(t *testing.T) {
			before, rest, ok := strings.Cut(river, "\n["+c.table+"]\n")
			_, after, more := strings.Cut(rest, "\n[")
			if !ok || !more {
				t.Fatal("the table is not in the file")
			}
			file := before + "\n[" + after
			if c.key == "" {
				mustDecode(t, file)
				return
			}
			if f := faultOf(t, file); f.Key != c.key || !strings.Contains(f.Text, "is missing") {
				t.Errorf("got %v, want %s to be missing", f, c.key)
			}
		})
	}
}
