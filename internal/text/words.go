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
// between their words: any number of blanks, hyphens and underscores.
func SameWords(a, b string) bool {
	for {
		x, y := word(&a), word(&b)
		if !strings.EqualFold(x, y) {
			return false
		}
		if x == "" {
			return true
		}
	}
}

// word cuts the next word off the front.
func word(s *string) string {
	between := func(r rune) bool { return r == ' ' || r == '-' || r == '_' || r == '\t' || r == '\u00a0' }
	rest := strings.TrimLeftFunc(*s, between)
	at := strings.IndexFunc(rest, between)
	if at < 0 {
		at = len(rest)
	}
	*s = rest[at:]
	return rest[:at]
}

// Title gives the word with a capital.
func Title(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
