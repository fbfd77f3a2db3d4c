package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/ribface/examples/internal/page"
	"example.com/ribface/examples/internal/say"
	"example.com/ribface/grade"
	"example.com/ribface/placing/practice"
)

// sheet is what is printed of one class, as text and as a page.
type sheet struct {
	title   string
	lead    string     // of the key: placing and cuts
	heads   []string   // of the table: traits
	rows    [][]string // one for each exhibit, its number first
	reasons []string   // of the key
	work    []work     // of the key in full
	note    string
}

// work is how one exhibit was graded.
type work struct {
	title string
	steps [][]string // what, how it came about, and the rule with its source
}

// sheetsOf makes the sheets for members, or the key.
func sheetsOf(set []practice.Invented, key, full bool) ([]sheet, error) {
	var out []sheet
	for _, c := range set {
		s := sheet{title: strings.ToUpper(c.Name()[:1]) + c.Name()[1:]}
		if !key {
			s.heads = []string{"No.", "sex", "skeletal", "lean", "marbling", "fat, in", "ribeye, sq in", "KPH, %", "weight, lb"}
			for e := range c.Graded.Exhibits() {
				k := e.Carcass
				m := k.Measures
				s.rows = append(s.rows, []string{fmt.Sprint(e.Number), k.Sex.String(), k.Maturity.Skeletal.String(), k.Maturity.Lean.String(), k.Marbling.String(),
					number(m.Fat), number(m.Ribeye), number(m.KPH), number(m.Weight)})
			}
			out = append(out, s)
			continue
		}
		s.lead = fmt.Sprintf("Placing %s, cuts %s", c.Official.Order(), c.Official.Cuts())
		s.heads = []string{"No.", "quality", "yield", "marbling", "fat, in", "ribeye, sq in", "KPH, %"}
		for n := range c.Official.Order().Exhibits() {
			a := c.Graded.Assessment(n)
			m := a.Carcass.Measures
			s.rows = append(s.rows, []string{fmt.Sprint(n), a.Quality.String(), say.Tenth(a.Yield), a.Carcass.Marbling.String(), number(m.Fat), number(m.Ribeye), number(m.KPH)})
			if full {
				s.work = append(s.work, workOf(n, a))
			}
		}
		r, err := reasons(c)
		if err != nil {
			return nil, err
		}
		s.reasons = r
		s.note = fmt.Sprintf("Drawn from %s [%s]. Traits go together as in a trial of 703 carcasses, where what goes together with marbling is overstated [%s].", c.Spec.Herd.Name, c.Spec.Herd.Means, c.Spec.Herd.Correlations)
		out = append(out, s)
	}
	return out, nil
}

// reasons returns the reasons for the placing of a class as a member would speak them; the
// first, which gives the placing, is left out.
func reasons(c practice.Invented) ([]string, error) {
	r, err := c.Graded.Reasons(c.Official.Order(), c.Spec.Policy)
	if err != nil {
		return nil, err
	}
	return r.Spoken()[1:], nil
}

// workOf returns the steps of an assessment.
func workOf(n int, a grade.Assessment) work {
	w := work{title: fmt.Sprintf("Exhibit %d: %s, yield grade %d", n, a.Quality, a.Yield.Grade())}
	for _, s := range a.Steps() {
		how := s.Result
		if s.Given != "" {
			how = s.Given + " → " + s.Result
		}
		w.steps = append(w.steps, []string{s.Name, how, fmt.Sprintf("%s [%s]", s.Rule, s.Cite)})
	}
	return w
}

// number gives a measure without its unit.
func number(m fmt.Stringer) string {
	n, _, _ := strings.Cut(m.String(), " ")
	return strings.TrimSuffix(n, "%")
}

const invented = "Invented: no carcass is real."

// asText writes the sheets for a screen.
func asText(sheets []sheet, key bool) string {
	var b strings.Builder
	for i, s := range sheets {
		if i > 0 {
			b.WriteString("\n")
		}
		title := s.title
		if key {
			title = "Key to " + strings.ToLower(s.title[:1]) + s.title[1:]
		}
		fmt.Fprintf(&b, "%s. No carcass of it is real.\n", title)
		if s.lead != "" {
			fmt.Fprintf(&b, "%s\n", s.lead)
		}
		b.WriteString("\n")
		table(&b, s.heads, s.rows, !key)
		if !key {
			n := len(s.rows)
			fmt.Fprintf(&b, "\nPlacing%s    cuts%s\n", strings.Repeat("  ___", n), strings.Repeat("  ___", n-1))
			continue
		}
		b.WriteString("\n")
		for _, r := range s.reasons {
			b.WriteString(say.Wrap("  ", r))
		}
		for _, w := range s.work {
			fmt.Fprintf(&b, "\n%s\n", w.title)
			for _, st := range w.steps {
				b.WriteString(say.Wrap("  ", st[0]+": "+st[1]))
				b.WriteString(say.Wrap("      ", st[2]))
			}
		}
		if i == len(sheets)-1 {
			b.WriteString("\n" + say.Wrap("", s.note))
		}
	}
	if !key {
		b.WriteString("\nThe key: the same command with -key.\n")
	}
	b.WriteString(say.Wrap("", say.Caution))
	return b.String()
}

// table writes a table with room for the members' grades.
func table(b *strings.Builder, heads []string, rows [][]string, write bool) {
	heads = slices.Clone(heads)
	for i, head := range heads { // the units stand below the table
		heads[i], _, _ = strings.Cut(head, ",")
	}
	wide := make([]int, len(heads))
	for _, row := range append([][]string{heads}, rows...) {
		for i, cell := range row {
			wide[i] = max(wide[i], len(cell))
		}
	}
	line := func(row []string, end string) {
		text := ""
		for i, cell := range row {
			text += fmt.Sprintf("%-*s  ", wide[i], cell)
		}
		b.WriteString(strings.TrimRight(" "+text+end, " ") + "\n")
	}
	head, end := "", ""
	if write {
		head, end = "quality  yield", "_______  _____"
	}
	line(heads, head)
	for _, row := range rows {
		line(row, end)
	}
	b.WriteString(" fat in inches, ribeye in square inches, KPH in percent, weight in pounds\n")
}

// asPage writes the sheets for a printer and a phone, one class to a sheet. Exhibits
// stand side by side there, as they hang.
func asPage(sheets []sheet, key bool) []byte {
	title := "Practice classes"
	if key {
		title = "Key to the practice classes"
	}
	if len(sheets) == 1 {
		title = strings.TrimSuffix(title, "es")
	}
	p := page.New(title)
	p.Note(invented)
	for i, s := range sheets {
		if i == 0 {
			p.Head(s.title)
		} else {
			p.Sheet(s.title)
		}
		if key {
			p.Lead(s.lead + ".")
			p.Table(page.Table{Caption: "In the order of the placing; yield grade to a tenth, decimals dropped", Heads: s.heads, Rows: s.rows, Numbers: []int{2, 4, 5, 6}})
			p.List(s.reasons...)
			for _, w := range s.work {
				p.Sub(w.title)
				p.Table(page.Table{Caption: "The work, with rules and sources", Heads: []string{"what", "how", "rule"}, Rows: w.steps})
			}
			continue
		}
		p.Say("Name: ______________________________")
		p.Say("Grade the carcasses and place them. Write in the empty fields.")
		p.Table(across(s))
		p.Table(page.PlacingTable("The placing, best first, and the cuts between neighbors", len(s.rows), true))
	}
	p.Words("exhibit", "placing", "cuts", "quality grade", "yield grade", "skeletal", "lean", "maturity", "marbling", "fat", "ribeye", "KPH")
	if key {
		p.Note(sheets[0].note)
	}
	return p.HTML()
}

// across turns the sheet for members round: a column for each exhibit.
func across(s sheet) page.Table {
	t := page.Table{Caption: "The carcasses, by exhibit", Heads: []string{"exhibit"}}
	for _, row := range s.rows {
		t.Heads = append(t.Heads, row[0])
	}
	for i, head := range s.heads[1:] {
		line := []string{head}
		for _, row := range s.rows {
			line = append(line, row[i+1])
		}
		t.Rows = append(t.Rows, line)
	}
	for _, own := range []string{"your quality grade", "your yield grade"} {
		line := []string{own}
		for range s.rows {
			line = append(line, page.Blank)
		}
		t.Rows = append(t.Rows, line)
	}
	return t
}
