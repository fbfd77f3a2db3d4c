package text

import "strings"

// Trim takes blanks off both ends; most text has none.
func Trim(s string) string {
	if n := len(s); n == 0 || s[0] > ' ' && s[0] < 0x80 && s[n-1] > ' ' && s[n-1] < 0x80 {
		return s
	}
	return strings.TrimSpace(s)
}

// CutSuffixFold is strings.CutSuffix for ASCII letters of any case.
func CutSuffixFold(s, suffix string) (before string, found bool) {
	at := len(s) - len(suffix)
	if at < 0 || !strings.EqualFold(s[at:], suffix) {
		return s, false
	}
	return s[:at], true
}

// SameWords reports whether two names are the same but for case and for what stands
// between their words: any number of blanks, hyphens and underscores. Blanks alone may
// stand around them, since a hyphen behind a name may be a sign.
func SameWords(a, b string) bool {
	a, b = Trim(a), Trim(b)
	for {
		var x, y string
		x, a = CutWord(a)
		y, b = CutWord(b)
		if !strings.EqualFold(x, y) || (a == "") != (b == "") {
			return false
		}
		if a == "" {
			return true
		}
	}
}

// CutWord divides text after its first word, and takes off what stands between that
// and the next. A separator with no word before or behind it counts as a word.
func CutWord(s string) (word, rest string) {
	between := func(r rune) bool { return r == ' ' || r == '-' || r == '_' || r == '\t' || r == '\u00a0' }
	at := strings.IndexFunc(s, between)
	if at < 0 {
		return s, ""
	}
	rest = strings.TrimLeftFunc(s[at:], between)
	if at == 0 || rest == "" {
		return s, ""
	}
	return s[:at], rest
}

// Title gives the word with a capital.
func Title(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
