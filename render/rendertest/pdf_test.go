package rendertest

import (
	"fmt"
	"strings"
	"testing"
)

// handmade is a PDF put together by hand, object by object.
type handmade struct {
	b       strings.Builder
	offsets map[int]int
	tables  []int
}

func (h *handmade) object(number int, body string) {
	if h.offsets == nil {
		h.offsets = map[int]int{}
	}
	h.offsets[number] = h.b.Len()
	fmt.Fprintf(&h.b, "%d 0 obj\n%s\nendobj\n", number, body)
}

// finish writes a table of the given objects and a trailer.
func (h *handmade) finish(trailer string, numbers ...int) {
	at := h.b.Len()
	h.b.WriteString("xref\n0 1\n0000000000 65535 f \n")
	for _, n := range numbers {
		fmt.Fprintf(&h.b, "%d 1\n%010d 00000 n \n", n, h.offsets[n])
	}
	if n := len(h.tables); n > 0 {
		trailer += fmt.Sprintf(" /Prev %d", h.tables[n-1])
	}
	h.tables = append(h.tables, at)
	fmt.Fprintf(&h.b, "trailer\n<< %s >>\nstartxref\n%d\n%%%%EOF\n", trailer, at)
}

const fullTrailer = "/Size 11 /Root 1 0 R"

// letteredIn adds a font of two bytes a letter as objects 5 to 10.
func (h *handmade) letteredIn() {
	stream := func(number int, of string) {
		h.object(number, fmt.Sprintf("<< /Length %d >>\nstream\n%s\nendstream", len(of), of))
	}
	glyphs := make([]byte, 2*0x500)
	for _, r := range "a(b)\\AHi\u0416" {
		glyphs[2*r+1] = 1
	}
	h.object(5, "<< /Type /Font /Subtype /Type0 /BaseFont /ABCDEF+Test /Encoding /Identity-H /DescendantFonts [6 0 R] /ToUnicode 7 0 R >>")
	h.object(6, "<< /Type /Font /Subtype /CIDFontType2 /BaseFont /ABCDEF+Test /FontDescriptor 8 0 R /DW 500 /W [72 [722] 100 110 222] /CIDToGIDMap 9 0 R >>")
	stream(7, "1 beginbfrange\n<0000> <FFFF> <0000>\nendbfrange")
	h.object(8, "<< /Type /FontDescriptor /FontName /ABCDEF+Test /FontFile2 10 0 R >>")
	stream(9, string(glyphs))
	stream(10, "glyphs")
}

// onePage returns a file of one page, 720 by 360 points from (36, 18) on, with
// the given content.
func onePage(content string) *handmade {
	h := &handmade{}
	h.b.WriteString("%PDF-1.4\n")
	h.object(1, "<< /Type /Catalog /Pages 2 0 R /Lang (old) >>")
	h.object(2, "<< /Type /Pages /Kids [3 0 R] /Count 1 /MediaBox [36 18 756 378] /Resources << /Font << /F1 5 0 R >> >> >>")
	h.object(3, "<< /Type /Page /Parent 2 0 R /Contents 4 0 R >>")
	h.object(4, fmt.Sprintf("<< /Length %d >>\nstream\n%s\nendstream", len(content), content))
	h.letteredIn()
	h.finish(fullTrailer, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10)
	return h
}

func pageOf(t *testing.T, content string) Page {
	t.Helper()
	f, err := ReadPDF([]byte(onePage(content).b.String()))
	if err != nil {
		t.Fatal(err)
	}
	pages, err := f.Pages()
	if err != nil {
		t.Fatal(err)
	}
	if len(pages) != 1 {
		t.Fatalf("%d pages, want 1", len(pages))
	}
	return pages[0]
}

func TestUpdateReplacesTheCatalogue(t *testing.T) {
	h := onePage("")
	h.object(1, "<< /Type /Catalog /Pages 2 0 R /Lang (new) >>")
	h.finish(fullTrailer, 1)
	f, err := ReadPDF([]byte(h.b.String()))
	if err != nil {
		t.Fatal(err)
	}
	root, err := f.Catalogue()
	if err != nil {
		t.Fatal(err)
	}
	if root["Lang"] != "new" || f.Sections != 2 || f.Version != "1.4" {
		t.Errorf("catalogue %v, %d sections, version %s; want the new one, 2, 1.4", root, f.Sections, f.Version)
	}
	text, err := f.CatalogueText()
	if err != nil || !strings.HasPrefix(text, "1 0 obj\n") || !strings.Contains(text, "(new)") || strings.Contains(text, "(old)") {
		t.Errorf("catalogue text %q, %v", text, err)
	}
}

func TestReadPDFRefuses(t *testing.T) {
	good := onePage("").b.String()
	for _, row := range []struct{ name, file, want string }{
		{"nothing", "", "does not start"},
		{"another kind of file", "<svg/>        ", "does not start"},
		{"no end", strings.TrimSuffix(good, "%%EOF\n"), "does not end"},
		{"startxref off by one", strings.Replace(good, "startxref\n", "startxref\n1", 1), "cannot be"},
		{"object moved by a space", strings.Replace(good, "3 0 obj", " 3 0 obj", 1), "no cross-reference table"},
		{"entry off by one", strings.Replace(good, "\n0000000009 ", "\n0000000010 ", 1), "object 1 does not stand at byte 10"},
		{"size too large", strings.Replace(good, "/Size 11", "/Size 12", 1), "/Size is 12"},
		{"root given twice", strings.Replace(good, "/Size 11", "/Root 1 0 R /Size 11", 1), "/Root stands twice"},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := ReadPDF([]byte(row.file))
			if err == nil || !strings.Contains(err.Error(), row.want) {
				t.Errorf("error %v, want one with %q", err, row.want)
			}
		})
	}
}

func TestPagesRefuses(t *testing.T) {
	for _, row := range []struct{ name, content, want string }{
		{"NaN", "NaN 5 m", "not expected"},
		{"infinity", "+Inf 5 m", "no number"},
		{"exponent", "1e3 5 m", "no number"},
		{"unknown operator", "0 0 m 5 5 l f", "not expected"},
		{"too few numbers", "5 m", "1 values"},
		{"line from nowhere", "5 5 l S", "no place to draw from"},
		{"line after closing", "0 0 m 5 0 l h 5 5 l S", "no place to draw from"},
		{"Q without q", "Q", "nothing was saved"},
		{"q without Q", "q", "left open"},
		{"path without S", "0 0 m 5 5 l", "left open"},
		{"clip of a triangle", "0 0 m 5 0 l 0 5 l h W n", "no upright rectangle"},
		{"text without font", "BT 5 5 Td (a) Tj ET", "without a font"},
		{"text outside BT", "BT /F1 9 Tf ET (a) Tj", "outside BT"},
		{"unknown font", "BT /F2 9 Tf ET", "no such font"},
		{"control character", "BT /F1 9 Tf <0061000A> Tj ET", "0xa"},
		{"half a letter", "BT /F1 9 Tf (abc) Tj ET", "cannot be read"},
		{"letter without a glyph", "BT /F1 9 Tf <0062> Tj <0043> Tj ET", "no glyph for 'C'"},
		{"string not closed", "BT /F1 9 Tf (a Tj ET", "not closed"},
		{"dash of no length", "[0 2] 0 d", "dash"},
	} {
		t.Run(row.name, func(t *testing.T) {
			f, err := ReadPDF([]byte(onePage(row.content).b.String()))
			if err != nil {
				t.Fatal(err)
			}
			if _, err := f.Pages(); err == nil || !strings.Contains(err.Error(), row.want) {
				t.Errorf("error %v, want one with %q", err, row.want)
			}
		})
	}
}
