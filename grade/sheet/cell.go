package sheet

import (
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity"
)

// comma reports whether the decimal sign is a comma.
func (m *Mapping) comma() bool { return m.Decimal == "," }

// absent reports whether a cell has a mark for missing.
func (m *Mapping) absent(cell string) bool {
	return slices.ContainsFunc(m.Missing, func(mark string) bool { return strings.EqualFold(cell, mark) })
}

// number puts a number in the plain form, without groups and with a point. What is
// not grouped in threes is left as it stands, and is then no number.
func (m *Mapping) number(cell string) string {
	point, group := ".", ","
	if m.comma() {
		point, group = ",", "."
	}
	whole, part, found := cell, "", false
	if at := strings.Index(cell, point); at >= 0 {
		whole, part, found = cell[:at], cell[at+1:], true
	} else if at := strings.LastIndexAny(cell, "0123456789") + 1; at > 0 {
		whole, part = cell[:at], cell[at:] // a unit may follow
	}
	for _, g := range [...]string{group, " ", "\u00a0", "\u202f", "'"} {
		if joined, ok := ungroup(whole, g); ok {
			whole = joined
			break
		}
	}
	if m.comma() && strings.Contains(whole+part, ".") {
		return "?" // a point that is no decimal sign here
	}
	if found {
		return whole + "." + part
	}
	return whole + part
}

// ungroup joins digits in groups of three, the first of one to three.
func ungroup(s, between string) (string, bool) {
	if !strings.Contains(s, between) {
		return s, false
	}
	groups := strings.Split(s, between)
	for i, g := range groups {
		digits := g
		if i == 0 {
			digits = strings.TrimLeft(g, "+-")
		}
		if strings.Trim(digits, "0123456789") != "" || len(digits) > 3 || len(digits) < 1 || i > 0 && len(digits) != 3 || i == 0 && digits[0] == '0' {
			return s, false
		}
	}
	return strings.Join(groups, ""), true
}

// whole reads a whole number of a scale; digits behind it are rounded where the
// mapping says so.
func (m *Mapping) whole(cell string) (int, error) {
	n, err := fixed.Read(m.number(cell))
	if err != nil {
		return 0, err
	}
	v, err := n.Units(0, 1, fixed.Rounding(m.Surplus))
	return int(min(max(v, -10_000), 10_000)), err
}

// bare reports whether a cell is a number and no name.
func bare(cell string) bool {
	c := cell[0]
	return c-'0' <= 9 || c == '.' || c == ',' || c == '+' || c == '-'
}

func (m *Mapping) marbling(cell string) (grade.Marbling, error) {
	if !bare(cell) {
		return grade.ParseMarbling(cell)
	}
	if m.Marbling == 0 {
		return 0, &grade.FieldError{Allowed: "a name; for numbers the mapping names the scale", Err: grade.ErrSyntax}
	}
	n, err := m.whole(cell)
	if err != nil {
		return 0, err
	}
	return m.Marbling.Marbling(n)
}

func (m *Mapping) maturity(cell string) (maturity.Score, error) {
	if bare(cell) && m.Maturity == MaturityNumbers {
		n, err := m.whole(cell)
		if err != nil {
			return 0, err
		}
		if s := maturity.Score(n); s.IsValid() {
			return s, nil
		}
		return 0, grade.ErrRange
	}
	if len(cell) == 3 && cell[0]-'A' <= 'E'-'A' && max(cell[1]-'0', cell[2]-'0') <= 9 { // the usual spelling, quickly
		return maturity.Group(cell[0] - 'A' + 1).At(int(cell[1]-'0')*10 + int(cell[2]-'0')), nil
	}
	if point, ok := m.Maturity.Point(); ok && len(cell) == 1 {
		if g, err := maturity.ParseGroup(cell); err == nil {
			return g.At(point), nil
		}
	}
	return maturity.Parse(cell)
}

// short are the spellings of a sex class in at most three letters. B is none, since it
// may be a bull or a bullock.
var short = map[string]grade.Sex{"s": grade.Steer, "st": grade.Steer, "str": grade.Steer, "h": grade.Heifer, "hf": grade.Heifer, "hfr": grade.Heifer, "c": grade.Cow, "cow": grade.Cow}

func (*Mapping) sex(cell string) (grade.Sex, error) {
	if len(cell) <= 3 {
		if sex := short[strings.ToLower(cell)]; sex != 0 {
			return sex, nil
		}
	}
	return grade.ParseSex(cell)
}

var darks = text.Enum[grade.DarkCut]{Kind: "dark cut", Names: []string{"", "1/3", "2/3"}, Zero: "no", Also: []text.Alias[grade.DarkCut]{{Name: "n", Value: 0}, {Name: "0", Value: 0}, {Name: "third", Value: 1}, {Name: "2 thirds", Value: 2}, {Name: "1 third", Value: 1}}}

func (*Mapping) dark(cell string) (grade.DarkCut, error) {
	if dark, err := darks.Parse(cell); err == nil {
		return dark, nil
	}
	return grade.ParseDarkCut(cell)
}

var yesNo = text.Enum[uint8]{Kind: "answer", Names: []string{"", "yes"}, Zero: "no", Also: []text.Alias[uint8]{{Name: "y", Value: 1}, {Name: "n", Value: 0}}}

func (*Mapping) yes(cell string) (bool, error) {
	n, err := yesNo.Parse(cell)
	return n == 1, err
}
