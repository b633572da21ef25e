package lettering

// fractions spells the vulgar fractions. The numerator one alone (the last
// entry) waits for its denominator, but is kept off a digit before it as well.
var fractions = map[rune]string{
	'\u00bc': "1/4", '\u00bd': "1/2", '\u00be': "3/4",
	'\u2150': "1/7", '\u2151': "1/9", '\u2152': "1/10",
	'\u2153': "1/3", '\u2154': "2/3",
	'\u2155': "1/5", '\u2156': "2/5", '\u2157': "3/5", '\u2158': "4/5",
	'\u2159': "1/6", '\u215a': "5/6",
	'\u215b': "1/8", '\u215c': "3/8", '\u215d': "5/8", '\u215e': "7/8",
	'\u2189': "0/3", '\u215f': "1/",
}

// plainForms spells characters by others that mean the same to the reader.
// It outranks the character set: curly quotes and the ellipsis have cp1252
// codes, but the stroke alphabet has only the plain ones.
var plainForms = map[rune]string{
	// Feet, inches and quotes.
	'\u2032': "'", '\u2033': "\"", '\u2034': "'''", '\u2057': "''''",
	'\u2035': "'", '\u2036': "\"",
	'\u02b9': "'", '\u02ba': "\"", '\u02bb': "'", '\u02bc': "'", '\u02bd': "'",
	'\u2018': "'", '\u2019': "'", '\u201a': "'", '\u201b': "'",
	'\u201c': "\"", '\u201d': "\"", '\u201e': "\"", '\u201f': "\"",
	// Dashes, dots and slashes.
	'\u2010': "-", '\u2011': "-", '\u2043': "-", '\u2212': "-", '\ufe63': "-",
	'\u2012': "\u2013", '\u2015': "\u2014",
	'\u2026': "...", '\u2024': ".", '\u2025': "..",
	'\u2044': "/", '\u2215': "/", '\u2236': ":",
	// Signs of the trade.
	'\u2116': "No.", '\u2300': "\u00d8", '\u2113': "l",
	'\u02da': "\u00b0", '\u2218': "\u00b0", '\u2103': "\u00b0C", '\u2109': "\u00b0F",
	'\u2219': "\u00b7", '\u22c5': "\u00b7",
	'\u2715': "\u00d7", '\u2716': "\u00d7", '\u2a2f': "\u00d7",
	'\u2248': "~", '\u2264': "<=", '\u2265': ">=", '\u2260': "!=",
	'\u2190': "<-", '\u2192': "->",
	'\u03bc': "\u00b5", '\u212a': "K", '\u212b': "\u00c5",
	'\u338e': "mg", '\u338f': "kg", '\u339c': "mm", '\u339d': "cm", '\u339e': "km",
	'\u33a0': "cm\u00b2", '\u33a1': "m\u00b2", '\u33a4': "cm\u00b3", '\u33a5': "m\u00b3",
	// Raised figures keep a sign that they are raised: 5 with a raised 5 must
	// not read 55. Lowered ones are names, as in x1.
	'\u2070': "^0", '\u2074': "^4", '\u2075': "^5", '\u2076': "^6",
	'\u2077': "^7", '\u2078': "^8", '\u2079': "^9",
	'\u2080': "0", '\u2081': "1", '\u2082': "2", '\u2083': "3", '\u2084': "4",
	'\u2085': "5", '\u2086': "6", '\u2087': "7", '\u2088': "8", '\u2089': "9",
	// Ligatures and letter pairs.
	'\ufb00': "ff", '\ufb01': "fi", '\ufb02': "fl", '\ufb03': "ffi",
	'\ufb04': "ffl", '\ufb05': "st", '\ufb06': "st",
	'\u0132': "IJ", '\u0133': "ij", '\u0149': "'n", '\u1e9e': "SS",
	'\u01c4': "D\u017d", '\u01c5': "D\u017e", '\u01c6': "d\u017e",
	'\u01c7': "LJ", '\u01c8': "Lj", '\u01c9': "lj",
	'\u01ca': "NJ", '\u01cb': "Nj", '\u01cc': "nj",
}

// plain returns the cp1252 spelling of r, which is no fraction; "?" where
// there is none. Never empty.
func plain(r rune) string {
	if s, ok := plainForms[r]; ok {
		return s
	}
	if _, ok := code(r); ok {
		return string(r)
	}
	if r >= '\uff01' && r <= '\uff5e' { // the full width copies of ASCII
		return string(r - '\uff01' + '!')
	}
	if b := baseLetter(r); b != 0 {
		return string(b)
	}
	return "?"
}
