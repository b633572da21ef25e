package design

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Fingerprint returns eight letters that differ between designs that differ in
// any value; the order and the comments of the file do not count. It is taken of
// the bare values, so that a better worded comment tag leaves it as it is.
//
// Errors: a value that cannot be written, which Check would have refused.
func (d *Design) Fingerprint() (string, error) {
	values, err := json.Marshal(d)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(values)
	return fmt.Sprintf("%x", sum[:4]), nil
}

// SlugLong is the longest slug, so that file names stay readable; its letters take up to
// 160 bytes of the 255 that systems allow a file's name.
const SlugLong = 40

// Slug returns the title in a form that is safe in file names everywhere: small letters of
// any script with their accents, digits and single hyphens, at most 40. Where nothing of
// the title is left it is "boat", with six letters of a fingerprint behind it when the title
// holds pictures, so that two such boats keep apart; "boat" stands in front of a name that
// Windows keeps for a device.
func (d *Design) Slug() string {
	letters := []rune(hyphened(d.Title))
	s := strings.TrimRight(string(letters[:min(len(letters), SlugLong)]), "-")
	switch {
	case s == "" && strings.ContainsFunc(d.Title, func(r rune) bool { return r > unicode.MaxASCII && unicode.IsPrint(r) }):
		return fmt.Sprintf("boat-%.3x", sha256.Sum256([]byte(d.Title)))
	case s == "":
		return "boat"
	case isDevice(s):
		return "boat-" + s
	}
	return s
}

// hyphened is a text in small letters, accents and digits of any script, with single hyphens
// for whatever stands between.
func hyphened(text string) string {
	words := strings.FieldsFunc(strings.ToLower(strings.ToValidUTF8(text, " ")), func(r rune) bool {
		return !unicode.In(r, unicode.L, unicode.M, unicode.Nd)
	})
	return strings.Join(words, "-")
}

// stemLong is the longest edition, in bytes, that stands in a file's name as it is: with a
// slug of 160 bytes and what a file is it stays under the 255 that systems allow.
const stemLong = 48

// Stem returns what a design's files are called after: its slug, and its edition behind it
// from the second on, so that no edition takes the place of another. An edition that is
// long, or holds neither letter nor digit, is six letters of its fingerprint.
func (d *Design) Stem() string {
	if d.EditionName() == first {
		return d.Slug()
	}
	edition := hyphened(d.Edition)
	if edition == "" || len(edition) > stemLong {
		edition = fmt.Sprintf("%.3x", sha256.Sum256([]byte(d.Edition)))
	}
	return d.Slug() + "-edition-" + edition
}

// isDevice reports whether Windows would take a file of that name for a device.
func isDevice(s string) bool {
	if slices.Contains([]string{"con", "prn", "aux", "nul"}, s) {
		return true
	}
	return len(s) == 4 && (s[:3] == "com" || s[:3] == "lpt") && s[3] >= '0' && s[3] <= '9'
}
