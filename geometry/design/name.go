package design

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// Fingerprint returns eight letters that differ between designs that differ in
// any value; the order and the comments of the file do not count.
func (d *Design) Fingerprint() (string, error) {
	h := sha256.New()
	if err := Encode(h, d); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil))[:8], nil
}

// slugLong is the longest slug, so that file names stay readable.
const slugLong = 40

// Slug returns the title in a form that is safe in file names everywhere: small
// ASCII letters, digits and single hyphens, at most 40; "boat" when nothing of
// the title is left.
func (d *Design) Slug() string {
	var b strings.Builder
	hyphen := false
	for _, r := range strings.ToLower(d.Title) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			if hyphen && b.Len() > 0 {
				b.WriteByte('-')
			}
			hyphen = false
			b.WriteRune(r)
		default:
			hyphen = true
		}
		if b.Len() >= slugLong {
			break
		}
	}
	s := strings.TrimRight(b.String()[:min(b.Len(), slugLong)], "-")
	if s == "" {
		return "boat"
	}
	return s
}
