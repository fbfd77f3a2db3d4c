package contest

import (
	"io"
	"iter"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/lines"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
)

// Sheet reads and writes one kind of row as comma-separated text (RFC 4180) with
// one row on each line and a header of column names. Make one with
// [PlacingSheet], [EstimateSheet], [HandSheet], [OfficialSheet] or [KeySheet]; the
// zero Sheet has no columns and refuses every header.
type Sheet[T any] struct {
	worker
	columns func() []lines.Column[T]
}

// table gives the columns, made anew for each reading, since columns of names keep those
// that they have met.
func (s Sheet[T]) table() lines.Table[T] {
	if s.columns == nil {
		return lines.Table[T]{}
	}
	return lines.Table[T]{Columns: s.columns()}
}

// Read yields the rows of the sheet in order. The header may have the columns in
// any order and leave out those that are not needed; case, and what stands between
// words, do not matter. A header with a column that is unknown, repeated or missing
// ends the reading, since no row could then be trusted.
//
// A row that cannot be read does not stop the rest: it yields the zero T and a
// *RowError, the type of package grade/sheet without a File, that tells of every cell
// that is wrong, with its line and column; the ID says whose row it is. An error of the reader itself comes last and is no RowError. Spaces around a field,
// empty lines and a byte order mark at the start are skipped. A field has no line
// break, so a quote that is not closed spoils its own line only; a line over 64 KiB is
// an error. The sheet is read line by line and never held as a whole.
func (s Sheet[T]) Read(r io.Reader) iter.Seq2[T, error] { return s.table().Read("", r) }

// Columns lists the names of the columns, those that are written first to last and
// then the further units that are read, with commas between.
func (s Sheet[T]) Columns() string { return lines.Names(s.table().Columns) }

// Write writes a header with every column, then the rows. What it writes, Read
// reads back as it was. It stops at the first row with a value that could not be
// read back, with a *RowError that gives the line it would have had, and at an
// error of the writer.
func (s Sheet[T]) Write(w io.Writer, rows iter.Seq[T]) error {
	if s.columns == nil {
		return &fault.FieldError{Field: "column", Allowed: "a sheet with columns", Err: fault.ErrMissing}
	}
	return s.table().Write(w, rows)
}

// checkName refuses names that could not be read back as they are.
func checkName(what, s string, needed bool) error {
	bad := func(allowed string, err error) error {
		return &fault.FieldError{Field: what, Value: strconv.QuoteToASCII(s), Allowed: allowed, Err: err}
	}
	switch {
	case s == "" && needed:
		return &fault.FieldError{Field: what, Allowed: "a name or number", Err: fault.ErrMissing}
	case len(s) > 256:
		return &fault.FieldError{Field: what, Value: strconv.Itoa(len(s)) + " bytes", Allowed: "at most 256 bytes", Err: fault.ErrRange}
	case !utf8.ValidString(s):
		return bad("UTF-8 text", fault.ErrSyntax)
	case strings.TrimSpace(s) != s:
		return bad("no space before or after", fault.ErrSyntax)
	case strings.ContainsFunc(s, unicode.IsControl) || strings.HasPrefix(s, "\ufeff"):
		return bad("no control characters", fault.ErrSyntax)
	}
	return nil
}

// mostNames is how many names a column keeps at a time.
const mostNames = 1 << 12

// name is a column of plain text. It keeps the names that it has read, so that a name
// that comes again is checked and held once.
func name[T any](what, path string, needed bool, at func(*T) *string) lines.Column[T] {
	seen, last := map[string]string{}, ""
	return lines.Column[T]{
		Name: what, Fact: what, Path: path, Needed: needed, Blank: needed,
		Read: func(row *T, s string) error {
			if s != last || s == "" {
				kept, ok := seen[s]
				if !ok {
					if err := checkName(what, s, needed); err != nil {
						return err
					}
					if len(seen) == mostNames {
						clear(seen)
					}
					kept = strings.Clone(s)
					seen[kept] = kept
				}
				last = kept
			}
			*at(row) = last
			return nil
		},
		Write: func(b []byte, row *T) ([]byte, error) {
			s := *at(row)
			if err := checkName(what, s, needed); err != nil {
				return b, err
			}
			return lines.Append(b, s, ',')
		},
	}
}

// who are the columns that say whose card it is.
func who[T any](at func(*T) *Member) []lines.Column[T] {
	return []lines.Column[T]{
		name("member", "member.id", true, func(row *T) *string { return &at(row).ID }),
		name("team", "member.team", false, func(row *T) *string { return &at(row).Team }),
		name("division", "member.division", false, func(row *T) *string { return &at(row).Division }),
	}
}

// checkExhibit refuses a number that no exhibit has.
func checkExhibit(n int) error {
	if n < 1 || n > maxExhibit {
		return &fault.FieldError{Field: "exhibit", Value: strconv.Itoa(n), Allowed: "1 to 60", Err: fault.ErrRange}
	}
	return nil
}

func exhibit[T any](at func(*T) *int) []lines.Column[T] {
	return []lines.Column[T]{{
		Name: "exhibit", Fact: "exhibit", Path: "exhibit", Needed: true, Blank: true,
		Read: func(row *T, s string) error {
			n, err := strconv.Atoi(s)
			if err != nil || s != strconv.Itoa(n) {
				return fault.Parse("exhibit", s, "", "1 to 60", fault.ErrSyntax)
			}
			*at(row) = n
			return checkExhibit(n)
		},
		Write: func(b []byte, row *T) ([]byte, error) {
			return strconv.AppendInt(b, int64(*at(row)), 10), checkExhibit(*at(row))
		},
	}}
}

// value is what a column with a mark in place of a value holds.
type value interface {
	comparable
	String() string
	AppendText([]byte) ([]byte, error)
}

// answer is a column that holds a value or a mark. It is written without its unit; one
// of a further unit is read and not written. What parse gives is checked.
func answer[T any, V value](title, fact, path, unit string, written bool, at func(*T) (*V, *placing.Mark), parse func(string) (V, error), check func(V) error) lines.Column[T] {
	c := lines.Column[T]{Name: title, Fact: fact, Path: path}
	var none V
	c.Read = func(row *T, s string) (err error) {
		v, mark := at(row)
		switch s {
		case "blank", "double-marked", "unreadable": // no values, which are tried before other spellings
		default:
			if *v, err = parse(s); err == nil {
				return nil
			}
		}
		if m, other := placing.ParseMark(s); other == nil {
			*mark, err = m, nil
		}
		return err
	}
	if !written {
		return c
	}
	c.Write = func(b []byte, row *T) ([]byte, error) {
		v, mark := at(row)
		switch {
		case *v == none:
			return text.AppendName(b, *mark)
		case *mark != 0:
			return b, both(fact, (*v).String(), *mark)
		}
		if err := check(*v); err != nil {
			return b, err
		}
		b, err := (*v).AppendText(b)
		return b[:len(b)-len(unit)], err
	}
	return c
}

// measure is a measure within its limits.
type measure[T any, V quantity[V]] struct {
	fact, path  string
	least, most V
	units       func(int64) V
	places      int // of the units
	parse       func(string, ...grade.Rounding) (V, error)
	at          func(*T) (*V, *placing.Mark)
}

type quantity[V any] interface {
	value
	Compare(V) int
	Units() int64
}

// column is the column of a measure in a unit, which is put after the number in a cell.
func (m *measure[T, V]) column(title, unit string, written bool) lines.Column[T] {
	check := func(v V) error { return within(m.fact, v, m.least, m.most) }
	slow, least, most := checked(plain(m.parse), check), m.least.Units(), m.most.Units()
	parse := func(s string) (V, error) {
		// A plain number in the unit that is counted in is read quickly.
		if n, ok := fixed.Plain(s, m.places); ok && written && n >= least && n <= most {
			return m.units(n), nil
		}
		return slow(s + unit)
	}
	return answer(title, m.fact, m.path, unit, written, m.at, parse, check)
}

// within refuses a number outside its limits.
func within[V quantity[V]](field string, v, least, most V) error {
	if v.Compare(least) < 0 || v.Compare(most) > 0 {
		return &fault.FieldError{Field: field, Value: v.String(), Allowed: least.String() + " to " + most.String(), Err: fault.ErrRange}
	}
	return nil
}

// leastYield and greatestYield are the ends of what the equation gives for measures
// within their limits: -5.12 and 18.52 (derived).
var leastYield, greatestYield = yieldLimits()

func yieldLimits() (least, greatest grade.Yield) {
	l := grade.CarcassLimits()
	lean, fat := l.Least, l.Most
	lean.Ribeye, fat.Ribeye = fat.Ribeye, lean.Ribeye
	least, _ = lean.Yield() // limits are within themselves
	greatest, _ = fat.Yield()
	return least, greatest
}

func checkYield(y grade.Yield) error { return within("yield", y, leastYield, greatestYield) }

func checkPreliminary(p grade.ShortcutYield) error {
	_, err := grade.FatForPreliminary(p)
	return err
}

// unchecked is for values that are in order as they are read, and tell of it themselves
// where they are written.
func unchecked[V any](V) error { return nil }

// checked is a parser that checks what it gives.
func checked[V any](parse func(string) (V, error), check func(V) error) func(string) (V, error) {
	return func(s string) (V, error) {
		v, err := parse(s)
		if err == nil {
			err = check(v)
		}
		return v, err
	}
}

// plain is a parser that rounds nothing.
func plain[V any](parse func(string, ...grade.Rounding) (V, error)) func(string) (V, error) {
	return func(s string) (V, error) { return parse(s) }
}

// facts are the columns of a grading card.
func facts[T any](at func(*T) *Facts) []lines.Column[T] {
	lo, hi := grade.CarcassLimits().Least, grade.CarcassLimits().Most
	fat := measure[T, grade.Thickness]{"fat", "facts.fat", lo.Fat, hi.Fat, grade.ThicknessUnits, 4, grade.ParseThickness, func(r *T) (*grade.Thickness, *placing.Mark) { f := at(r); return &f.Fat, &f.Marks.Fat }}
	ribeye := measure[T, grade.Area]{"ribeye", "facts.ribeye", lo.Ribeye, hi.Ribeye, grade.AreaUnits, 4, grade.ParseArea, func(r *T) (*grade.Area, *placing.Mark) { f := at(r); return &f.Ribeye, &f.Marks.Ribeye }}
	kph := measure[T, grade.Share]{"KPH", "facts.kph", lo.KPH, hi.KPH, grade.ShareUnits, 4, grade.ParseShare, func(r *T) (*grade.Share, *placing.Mark) { f := at(r); return &f.KPH, &f.Marks.KPH }}
	weight := measure[T, grade.Weight]{"weight", "facts.weight", lo.Weight, hi.Weight, grade.WeightUnits, 4, grade.ParseWeight, func(r *T) (*grade.Weight, *placing.Mark) { f := at(r); return &f.Weight, &f.Marks.Weight }}
	yield := measure[T, grade.Yield]{"yield", "facts.yield", leastYield, greatestYield, grade.YieldUnits, 8, grade.ParseYield, func(r *T) (*grade.Yield, *placing.Mark) { f := at(r); return &f.Yield, &f.Marks.Yield }}
	score := func(name string, at func(*T) (*maturity.Score, *placing.Mark)) lines.Column[T] {
		return answer(name, name, "facts."+name, "", true, at, maturity.Parse, func(s maturity.Score) error { return s.Check(name) })
	}
	return []lines.Column[T]{
		score("skeletal", func(r *T) (*maturity.Score, *placing.Mark) { f := at(r); return &f.Skeletal, &f.Marks.Skeletal }),
		score("lean", func(r *T) (*maturity.Score, *placing.Mark) { f := at(r); return &f.Lean, &f.Marks.Lean }),
		score("maturity", func(r *T) (*maturity.Score, *placing.Mark) { f := at(r); return &f.Maturity, &f.Marks.Maturity }),
		answer("marbling", "marbling", "facts.marbling", "", true, func(r *T) (*grade.Marbling, *placing.Mark) { f := at(r); return &f.Marbling, &f.Marks.Marbling }, grade.ParseMarbling, func(m grade.Marbling) error { return m.Check("marbling") }),
		answer("quality", "quality", "facts.quality", "", true, func(r *T) (*grade.Quality, *placing.Mark) { f := at(r); return &f.Quality, &f.Marks.Quality }, grade.ParseQuality, unchecked),
		fat.column("fat_in", " in", true),
		fat.column("fat_mm", " mm", false),
		fat.column("fat_cm", " cm", false),
		answer("preliminary", "preliminary", "facts.preliminary", "", true, func(r *T) (*grade.ShortcutYield, *placing.Mark) {
			f := at(r)
			return &f.Preliminary, &f.Marks.Preliminary
		}, checked(plain(grade.ParseShortcutYield), checkPreliminary), checkPreliminary),
		ribeye.column("ribeye_sq_in", " sq in", true),
		ribeye.column("ribeye_sq_cm", " sq cm", false),
		kph.column("kph_pct", "%", true),
		weight.column("weight_lb", " lb", true),
		weight.column("weight_kg", " kg", false),
		yield.column("yield", "", true),
	}
}

// where are the columns that say which class a row is about.
func where[T any](contest, class func(*T) *string) []lines.Column[T] {
	return []lines.Column[T]{name("contest", "contest", false, contest), name("class", "class", true, class)}
}

// PlacingSheet is the sheet of placing cards: contest, class, member, team,
// division, placing. The placing is written with hyphens, as 3-2-1-4 (published:
// ext-maryland-contests), or is the mark that says why there is none: blank,
// double-marked or unreadable; it is read as [placing.ParseCard] reads it. An empty
// placing reads as the zero Card, which counts as blank.
func PlacingSheet() Sheet[PlacingCard] {
	return Sheet[PlacingCard]{columns: func() []lines.Column[PlacingCard] {
		return slices.Concat(
			where(func(r *PlacingCard) *string { return &r.Contest }, func(r *PlacingCard) *string { return &r.Class }),
			who(func(r *PlacingCard) *Member { return &r.Member }),
			[]lines.Column[PlacingCard]{{
				Name: "placing", Fact: "placing", Path: "card", Needed: true,
				Read:  func(r *PlacingCard, s string) (err error) { r.Card, err = placing.ParseCard(s); return err },
				Write: func(b []byte, r *PlacingCard) ([]byte, error) { return r.Card.AppendText(b) },
			}})
	}}
}

// EstimateSheet is the sheet of grading cards: contest, class, exhibit, member,
// team, division, skeletal, lean, maturity, marbling, quality, fat_in, preliminary,
// ribeye_sq_in, kph_pct, weight_lb, yield. Also read: fat_mm, fat_cm, ribeye_sq_cm and
// weight_kg, which are turned into the nearest 0.0001 of the unit that is written.
//
// Each fact may be a value, a mark (blank, double-marked, unreadable) or empty. An
// empty field says nothing, as when the item was not asked for; blank says that it
// was and that no answer was given.
func EstimateSheet() Sheet[Estimate] {
	return Sheet[Estimate]{columns: func() []lines.Column[Estimate] {
		return slices.Concat(
			where(func(r *Estimate) *string { return &r.Contest }, func(r *Estimate) *string { return &r.Class }),
			exhibit(func(r *Estimate) *int { return &r.Exhibit }),
			who(func(r *Estimate) *Member { return &r.Member }),
			facts(func(r *Estimate) *Facts { return &r.Facts }))
	}}
}

// HandSheet is the sheet of scores that people gave: contest, component, class,
// member, team, division, score. The component is the one of the format that the
// score counts for, as "reasons". The score is a number with at most 4 places, or
// a mark.
func HandSheet() Sheet[HandScore] {
	return Sheet[HandScore]{columns: func() []lines.Column[HandScore] {
		return slices.Concat([]lines.Column[HandScore]{
			name("contest", "contest", false, func(r *HandScore) *string { return &r.Contest }),
			name("component", "component", true, func(r *HandScore) *string { return &r.Component }),
			name("class", "class", false, func(r *HandScore) *string { return &r.Class }),
		}, who(func(r *HandScore) *Member { return &r.Member }), []lines.Column[HandScore]{
			answer("score", "score", "score", "", true, func(r *HandScore) (*Points, *placing.Mark) { return &r.Score, &r.Mark }, parsePoints, unchecked),
		})
	}}
}

// OfficialSheet is the sheet of official placings: contest, class, placing, cuts.
// Cuts are written from the top pair down, as 2-8-2 (published:
// ext-maryland-contests).
func OfficialSheet() Sheet[OfficialPlacing] {
	return Sheet[OfficialPlacing]{columns: func() []lines.Column[OfficialPlacing] {
		return append(where(func(r *OfficialPlacing) *string { return &r.Contest }, func(r *OfficialPlacing) *string { return &r.Class }),
			official("placing", "order", "a placing, as 3-2-1-4", func(r *OfficialPlacing) *placing.Order { return &r.Order }, placing.ParseOrder),
			official("cuts", "cuts", "cuts, as 2-8-2", func(r *OfficialPlacing) *placing.Cuts { return &r.Cuts }, placing.ParseCuts))
	}}
}

// official is a column of an official placing, which has to be there.
func official[V interface {
	IsValid() bool
	AppendText([]byte) ([]byte, error)
}](name, path, allowed string, at func(*OfficialPlacing) *V, parse func(string) (V, error)) lines.Column[OfficialPlacing] {
	return lines.Column[OfficialPlacing]{
		Name: name, Fact: name, Path: path, Needed: true, Blank: true,
		Read: func(r *OfficialPlacing, s string) (err error) { *at(r), err = parse(s); return err },
		Write: func(b []byte, r *OfficialPlacing) ([]byte, error) {
			if v := *at(r); v.IsValid() {
				return v.AppendText(b)
			}
			return b, &fault.FieldError{Field: name, Allowed: allowed, Err: fault.ErrMissing}
		},
	}
}

// KeySheet is the sheet of official facts: contest, class, exhibit and the facts
// as in [EstimateSheet].
func KeySheet() Sheet[OfficialFacts] {
	return Sheet[OfficialFacts]{columns: func() []lines.Column[OfficialFacts] {
		return slices.Concat(
			where(func(r *OfficialFacts) *string { return &r.Contest }, func(r *OfficialFacts) *string { return &r.Class }),
			exhibit(func(r *OfficialFacts) *int { return &r.Exhibit }),
			facts(func(r *OfficialFacts) *Facts { return &r.Facts }))
	}}
}
