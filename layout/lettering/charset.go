package lettering

// highCodes are the characters cp1252 puts at 0x80 to 0x9f, where Latin-1 has
// control characters; 0 where cp1252 has nothing.
var highCodes = [32]rune{
	'\u20ac', 0, '\u201a', '\u0192', '\u201e', '\u2026', '\u2020', '\u2021',
	'\u02c6', '\u2030', '\u0160', '\u2039', '\u0152', 0, '\u017d', 0,
	0, '\u2018', '\u2019', '\u201c', '\u201d', '\u2022', '\u2013', '\u2014',
	'\u02dc', '\u2122', '\u0161', '\u203a', '\u0153', 0, '\u017e', '\u0178',
}

// code returns the cp1252 code of r and whether r is printable there. Control
// characters have none.
func code(r rune) (byte, bool) {
	switch {
	case r >= ' ' && r <= '~', r >= 0xa0 && r <= 0xff:
		return byte(r), true
	case r < 0x0152 || r > 0x2122: // outside everything in highCodes
		return 0, false
	}
	for i, h := range highCodes {
		if h == r {
			return byte(0x80 + i), true
		}
	}
	return 0, false
}
