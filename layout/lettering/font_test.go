package lettering

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// TestFontIsTheOriginal reads our font and the one it was made from with another reader:
// every character has the outline and the width that its designers gave it.
func TestFontIsTheOriginal(t *testing.T) {
	ours, err := sfnt.Parse(Font())
	if err != nil {
		t.Fatal(err)
	}
	whole, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	em := fixed.I(int(whole.UnitsPerEm()))
	look := func(f *sfnt.Font, r rune) (out sfnt.Segments, wide fixed.Int26_6, there bool) {
		var b sfnt.Buffer
		n, err := f.GlyphIndex(&b, r)
		if err != nil || n == 0 {
			return nil, 0, false
		}
		if wide, err = f.GlyphAdvance(&b, n, em, font.HintingNone); err != nil {
			t.Fatal(err)
		}
		if out, err = f.LoadGlyph(&b, n, em, nil); err != nil {
			t.Fatal(err)
		}
		return append(sfnt.Segments{}, out...), wide, true
	}
	count := 0
	for r := rune(0); r <= 0xffff; r++ {
		got, wide, there := look(ours, r)
		if there != has(r) {
			t.Errorf("%+q: there %v, taken to be there %v", r, there, has(r))
		}
		if !there {
			continue
		}
		count++
		want, wideThere, known := look(whole, r)
		if !known || wide != wideThere || len(got) != len(want) {
			t.Fatalf("%+q: width %v of %d strokes, the original has %v of %d", r, wide, len(got), wideThere, len(want))
		}
		for i := range want {
			if got[i] != want[i] {
				t.Fatalf("%+q: another outline than the original's", r)
			}
		}
		thousandths := math.Round(float64(wide) * 1000 / float64(em))
		if w := Width(string(r), 1000*CapHeight); math.Abs(w-thousandths) > 1e-6 {
			t.Errorf("%+q advances %g thousandths of an em, the font says %g", r, w, thousandths)
		}
	}
	if count < 580 {
		t.Errorf("the font has %d characters", count)
	}
	var b sfnt.Buffer
	h, err := ours.GlyphIndex(&b, 'H')
	if err != nil {
		t.Fatal(err)
	}
	box, _, err := ours.GlyphBounds(&b, h, em, font.HintingNone)
	if high := -float64(box.Min.Y) / float64(em); err != nil || high != CapHeight {
		t.Errorf("capitals are %g of an em high, want %g (%v)", high, CapHeight, err)
	}
}

// TestFontHasTheScripts asks for the letters that names are written with. Sources: the
// alphabets of the languages, from memory; ISO 8859-1, -2, -4, -5, -7 and -9 hold them.
func TestFontHasTheScripts(t *testing.T) {
	for name, letters := range map[string]string{
		"French": "àâæçéèêëîïôœùûüÿ", "German": "äöüßÄÖÜ", "Icelandic": "áðéíóúýþæöÞÐ", "Danish": "æøåÆØÅ",
		"Polish": "ąćęłńóśźżĄĆĘŁŃÓŚŹŻ", "Czech": "áčďéěíňóřšťúůýž", "Hungarian": "őűŐŰ", "Romanian": "ăâîşţ",
		"Turkish": "çğıİöşü", "Latvian": "āčēģīķļņšūž", "Welsh": "ŵŷŴŶ", "Maltese": "ċġħż", "Esperanto": "ĉĝĥĵŝŭ", "Maori": "āēīōū",
		"Greek":     "αάβγδεέζηήθιίϊΐκλμνξοόπρσςτυύϋΰφχψωώΑΆΒΓΔΕΈΖΗΉΘΙΊΚΛΜΝΞΟΌΠΡΣΤΥΎΦΧΨΩΏ",
		"Russian":   "абвгдеёжзийклмнопрстуфхцчшщъыьэюяАБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯ",
		"Ukrainian": "єіїґЄІЇҐ", "Serbian": "ђјљњћџ", "Macedonian": "ѓѕќ", "Belarusian": "ўЎ",
	} {
		if got := Safe(letters); got != letters || Missing(letters) != "" {
			t.Errorf("%s: %q is lettered %q, and %q is missing", name, letters, got, Missing(letters))
		}
	}
}

// TestAccentsAreWhole: every letter with an accent is the font's, and one that Unicode
// would call a letter.
func TestAccentsAreWhole(t *testing.T) {
	for pair, r := range accents() {
		if !has(r) || !has(pair[0]) || !unicode.IsMark(pair[1]) || !unicode.IsLetter(r) {
			t.Errorf("%+q of %+q", r, pair)
		}
	}
	if n := len(accents()); n < 200 || n != strings.Count(accentFile, "\n") {
		t.Errorf("%d letters with accents", n)
	}
}

func TestMissing(t *testing.T) {
	for in, want := range map[string]string{
		"": "", "Brook 5½″ ‘a’ №3": "", "Łódź Γλάρος Чайка": "", "e\u0301 и\u0306 \U0001f6f6": "\U0001f6f6",
		"小舟 小": "小舟", "Nguyễn": "ễ", "קאנו": "קאנו", "\xff": "\ufffd", "□": "", "a\u200bb\x00": "",
	} {
		if got := Missing(in); got != want {
			t.Errorf("Missing(%+q) = %+q, want %+q", in, got, want)
		}
	}
}
