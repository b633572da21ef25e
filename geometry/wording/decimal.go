package wording

// Decimals says how decimals are written, behind a message about a text that has a comma
// between two digits: `; for decimals write 80.5, not 80,5`. It is "" for any other text.
func Decimals(text string) string {
	for i := 1; i+1 < len(text); i++ {
		if text[i] != ',' || !digit(text[i-1]) || !digit(text[i+1]) {
			continue
		}
		from, to := i, i+1
		for from > 0 && digit(text[from-1]) {
			from--
		}
		for to < len(text) && digit(text[to]) {
			to++
		}
		if whole, part := text[from:i], text[i+1:to]; len(whole)+len(part) <= longest {
			return "; for decimals write " + whole + "." + part + ", not " + whole + "," + part
		}
	}
	return ""
}

func digit(b byte) bool { return b >= '0' && b <= '9' }
