package design

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
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

// slugLong is the longest slug, so that file names stay readable.
const slugLong = 40

// Slug returns the title in a form that is safe in file names everywhere: small
// ASCII letters, digits and single hyphens, at most 40; "boat" when nothing of
// the title is left, and in front of a name that Windows keeps for a device.
func (d *Design) Slug() string {
	words := strings.FieldsFunc(strings.ToLower(d.Title), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	})
	s := strings.Join(words, "-")
	s = strings.TrimRight(s[:min(len(s), slugLong)], "-")
	switch {
	case s == "":
		return "boat"
	case isDevice(s):
		return "boat-" + s
	}
	return s
}

// isDevice reports whether Windows would take a file of that name for a device.
func isDevice(s string) bool {
	if slices.Contains([]string{"con", "prn", "aux", "nul"}, s) {
		return true
	}
	return len(s) == 4 && (s[:3] == "com" || s[:3] == "lpt") && s[3] >= '0' && s[3] <= '9'
}
