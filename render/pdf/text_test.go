package pdf_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/render/rendertest"
)

// sizeStep is how much lower than asked for capitals may be, mm: the file has sizes in
// hundredths of a point, cut, so that no line gets longer than it was laid out.
const sizeStep = 0.01 * 25.4 / 72 * lettering.CapHeight

func readTexts(t *testing.T, texts ...layout.Text) []rendertest.Text {
	t.Helper()
	got := readPages(t, onSheet(nil, texts))[0].Texts
	if len(got) != len(texts) {
		t.Fatalf("%d texts, want %d", len(got), len(texts))
	}
	return got
}

func TestTextPlaceHeightAndTurn(t *testing.T) {
	// Go Regular, tables hmtx and OS/2: H is 1479 of 2048 wide and 1480 high, i is 505 wide;
	// a file rounds widths to thousandths.
	const wide = (722 + 247 + 722) / (1480.0 / 2048 * 1000) // of HiH, over the height of capitals
	for _, row := range []struct {
		height, angle float64
		align         layout.Align
		back          float64 // share of the width the start lies behind the place
	}{
		{2.5, 0, layout.Left, 0}, {3.2, 0, layout.Middle, 0.5}, {6, 0, layout.Right, 1},
		{2.5, math.Pi / 2, layout.Left, 0}, {4.5, math.Pi / 2, layout.Right, 1}, {2.5, -1.1, layout.Middle, 0.5}, {12, 3, layout.Right, 1},
	} {
		t.Run(fmt.Sprintf("%g high, turned %g, align %d", row.height, row.angle, row.align), func(t *testing.T) {
			place := pt(140, 95)
			text := layout.Text{At: place, Height: row.height, Angle: row.angle, Align: row.align, Words: "HiH"}
			got := readTexts(t, text)[0]
			sin, cos := math.Sincos(row.angle)
			back := row.back * wide * got.CapHeight()
			// A turned text passes through a matrix of five decimals: twice the step.
			at(t, "start", got.At, place.Sub(pt(back*cos, back*sin)), 2*step)
			if less := row.height - got.CapHeight(); !(less >= -1e-9 && less <= sizeStep) {
				t.Errorf("capitals %.4f mm high, want %.4f", got.CapHeight(), row.height)
			}
			if off := math.Remainder(got.Angle-row.angle, 2*math.Pi); math.Abs(off) > 1e-5 {
				t.Errorf("turned %.6f, want %.6f rad", got.Angle, row.angle)
			}
			if got.Gray != 0 || got.Words != "HiH" {
				t.Errorf("%q in gray %g, want HiH in black", got.Words, got.Gray)
			}
		})
	}
}

func TestTextInAView(t *testing.T) {
	doc := shown(nil, []layout.Text{{At: pt(500, 20), Height: 3, Words: "A"}, {At: pt(510, 20), Height: 5, Angle: 0.5, Words: "B"},
		{At: pt(520, 20), Height: 3, Words: "C"}}, geometry.Box{Min: pt(490, 0), Max: pt(560, 50)}, geometry.Shift(-470, 60))
	texts := readPages(t, doc)[0].Texts
	for i, x := range []float64{30, 40, 50} {
		at(t, texts[i].Words, texts[i].At, pt(x, 80), 2*step)
		if off := texts[i].Clip.Off(rendertest.Box{X0: 20, Y0: 60, X1: 90, Y1: 110}); off > 2*step {
			t.Errorf("%s is clipped to %v, want the frame", texts[i].Words, texts[i].Clip)
		}
		if want := []float64{3, 5, 3}[i]; want-texts[i].CapHeight() > sizeStep {
			t.Errorf("%s is %.4f mm high, want %g", texts[i].Words, texts[i].CapHeight(), want)
		}
	}
}

// printable holds every character of cp1252. Source: WHATWG, Encoding Standard,
// index windows-1252.
func printable() string {
	var b strings.Builder
	for r := ' '; r <= '~'; r++ {
		b.WriteRune(r)
	}
	b.WriteString("\u20ac\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u017d" +
		"\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u017e\u0178")
	for r := '\u00a0'; r <= '\u00ff'; r++ {
		b.WriteRune(r)
	}
	return b.String()
}

func TestEveryCharacterOfCP1252(t *testing.T) {
	var texts []layout.Text
	for _, r := range printable() {
		texts = append(texts, layout.Text{At: pt(20, 20), Height: 3, Words: "a" + string(r) + "b"})
	}
	kept := 0
	for i, got := range readTexts(t, texts...) {
		want := lettering.Safe(texts[i].Words) // spells fractions and curly quotes plainly
		if want == texts[i].Words {
			kept++
		}
		if got.Words != want {
			t.Errorf("%q reads back as %q, want %q", texts[i].Words, got.Words, want)
		}
	}
	if kept < 200 {
		t.Errorf("only %d characters are written as they are", kept)
	}
}

// hostile are texts that people paste from anywhere, or that end a string, a
// text object or a file early where they are not escaped.
func hostile() []string {
	return []string{
		"", " ", "\x00", "caf\xe9", "\xff\xfe", "truncated \xe2\x82", "\U0001F6F6 canoe", "\u4e2d\u6587", "\u202eright to left",
		"(", ")", "((", "))", "\\", "\\)", "\\\\(", ") Tj ET 0 0 m 500 500 l S BT (", "endstream endobj", "%%EOF\nstartxref\n0", "\r\n\t\v\f\b",
		"{nb}", "%!PS %s %d %n", "/Root 1 0 R /Size 99", "5\u2032 6\u00bd\u2033 \u2116 3", strings.Repeat("W", 20000), "\u00ad\u200b\ufeff", "\x1b[31m",
	}
}

func TestHostileLettering(t *testing.T) {
	for _, h := range hostile() {
		want := []string{"next"}
		if words := lettering.Safe(h); words != "" {
			want = []string{words, "next"}
		}
		doc := onSheet(nil, []layout.Text{{At: pt(20, 20), Height: 3, Words: h}, {At: pt(20, 40), Height: 3, Words: "next"}})
		page := readPages(t, doc)[0]
		var got []string
		for _, text := range page.Texts {
			got = append(got, text.Words)
		}
		if !slices.Equal(got, want) || len(page.Strokes) > 0 {
			t.Errorf("%.40q reads back as %.40q with %d strokes, want %.40q", h, got, len(page.Strokes), want)
		}
	}
}
