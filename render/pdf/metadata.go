package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strings"
	"time"
	"unicode"

	"github.com/go-pdf/fpdf"
)

// describe says in the file what it is, and returns the same as XML: readers look for
// either.
func describe(f *fpdf.Fpdf, title string, made time.Time) (about string) {
	title = strings.Map(func(r rune) rune {
		if !unicode.IsSpace(r) && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(title, "\ufffd"))
	title = strings.Join(strings.Fields(title), " ")
	f.SetCatalogSort(true)
	f.SetCreationDate(made.UTC())
	f.SetModificationDate(made.UTC())
	f.SetTitle(textString(title), false)
	f.SetCreator("ribwright", false)
	f.SetProducer("ribwright", false)
	f.SetLang("en")
	return fmt.Sprintf(xmp, "\ufeff", asXML.Replace(title), made.UTC().Format(time.RFC3339))
}

// asXML writes a text between tags.
var asXML = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", "\ufffe", "\ufffd", "\uffff", "\ufffd")

// xmp is the description that copy shops' checks read. Source: ISO 16684-1.
const xmp = `<?xpacket begin="%s" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
<dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>
<xmp:CreateDate>%[3]s</xmp:CreateDate><xmp:ModifyDate>%[3]s</xmp:ModifyDate><xmp:CreatorTool>ribwright</xmp:CreatorTool>
<pdf:Producer>ribwright</pdf:Producer>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`

// The writing library calls a font by the key it is added under, with utf8 in front. The
// name that a subset must have, six capitals and a plus before the font's own, is as long,
// so that it can take its place in the finished file. Source: ISO 32000-1, 9.6.4.
const (
	fontKey     = "ribwright-sheets"
	writtenName = "/utf8" + fontKey
	ownName     = "+RibwrightSans"
)

// withFontName gives the embedded subset its name. The capitals follow from what the file
// holds: two files with other letters in them have other names for their subsets.
func withFontName(file []byte) []byte {
	sum := sha256.Sum256(file)
	name := []byte("/")
	for _, b := range sum[:6] {
		name = append(name, 'A'+b%26)
	}
	return bytes.ReplaceAll(file, []byte(writtenName), append(name, ownName...))
}

// fileID returns the trailer's entry that tells one file from another.
func fileID(file []byte) string {
	sum := sha256.Sum256(file)
	return fmt.Sprintf("/ID [<%X> <%[1]X>]\n", sum[:16])
}
