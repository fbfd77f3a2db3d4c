package main

import (
	"database/sql"
	"database/sql/driver"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
)

// stored is one type with the values that go through the database.
type stored struct {
	name string // package and type, as maturity.Score
	run  func(*testing.T, *sql.DB)
}

// via puts each value into a column of text and takes it out again as text, as
// bytes and through sql.Null; a NULL comes back as one and gives the zero value of the
// bare type. Bad text leaves the receiver as it was.
func via[T interface {
	comparable
	driver.Valuer
}, P interface {
	*T
	sql.Scanner
}](values ...T) stored {
	typ := reflect.TypeFor[T]()
	return stored{typ.String(), func(t *testing.T, db *sql.DB) {
		scan := func(query string, into any, args ...any) error {
			return db.QueryRow(query, args...).Scan(into)
		}
		for _, v := range values {
			if _, err := db.Exec(`DELETE FROM item`); err != nil {
				t.Fatal(err)
			}
			if _, err := db.Exec(`INSERT INTO item (v) VALUES (?)`, v); err != nil {
				t.Fatal(err)
			}
			var kind string
			if err := scan(`SELECT typeof(v) FROM item`, &kind); err != nil || kind != "text" {
				t.Errorf("%v is kept as %s, %v", v, kind, err)
			}
			for _, query := range []string{`SELECT v FROM item`, `SELECT CAST(v AS BLOB) FROM item`} {
				var got T
				if err := scan(query, P(&got)); err != nil || got != v {
					t.Errorf("%s gives %v, %v; want %v", query, got, err, v)
				}
			}
			var null sql.Null[T]
			if err := scan(`SELECT v FROM item`, &null); err != nil || null != (sql.Null[T]{V: v, Valid: true}) {
				t.Errorf("sql.Null gives %+v, %v; want %v", null, err, v)
			}
			if err := scan(`SELECT count(*) FROM item WHERE v = ?`, new(int), v); err != nil {
				t.Errorf("as a parameter: %v", err)
			}
			got, zero := v, *new(T)
			if err := scan(`SELECT 'no such thing'`, P(&got)); err == nil || got != v {
				t.Errorf("bad text into %v gives %v, %v", v, got, err)
			}
			if err := scan(`SELECT NULL`, P(&got)); err != nil || got != zero {
				t.Errorf("NULL into %v gives %v, %v", v, got, err)
			}
			if _, err := db.Exec(`UPDATE item SET v = ?`, sql.Null[T]{}); err != nil {
				t.Fatal(err)
			}
			null = sql.Null[T]{V: v, Valid: true}
			if err := scan(`SELECT v FROM item`, &null); err != nil || null.Valid {
				t.Errorf("NULL through sql.Null gives %+v, %v", null, err)
			}
		}
	}}
}

// types lists every type of the library that goes into a database.
var types = []stored{
	via[maturity.Group](maturity.A, maturity.E),
	via[maturity.Score](maturity.A.At(0), maturity.B.At(5), maturity.E.At(100)),
	via[maturity.Months](1, 29, 600),
	via[maturity.Teeth](maturity.Incisors(0), maturity.Incisors(1), maturity.Incisors(8)),
	via[maturity.Buttons](maturity.Ossified(0), maturity.WhiteAndSoft),
	via[grade.Thickness](grade.Inches(0), grade.Inches(0.6), grade.Inches(-0.1)),
	via[grade.Area](grade.SquareInches(0), grade.SquareInches(12.4)),
	via[grade.Share](grade.Percent(0), grade.Percent(2.5)),
	via[grade.Weight](grade.Pounds(0), grade.Pounds(842)),
	via[grade.Yield](grade.Grades(0), grade.Grades(2.952), grade.Grades(-2.38)),
	via[grade.ShortcutYield](grade.ShortcutGrades(2.16)),
	via[grade.Degree](grade.Devoid, grade.Abundant),
	via[grade.Marbling](grade.Devoid.At(0), grade.Moderate.At(40), grade.Abundant.At(100)),
	via[grade.Grade](grade.NoGrade, grade.Prime),
	via[grade.Part](grade.Low, grade.High),
	via[grade.Quality](grade.NoGrade.Part(grade.Whole), grade.Choice.Part(grade.Low)),
	via[grade.Tier](grade.BelowStandard, grade.PrimeTier),
	via[grade.Edition](grade.Edition1975, grade.Current),
	via[grade.Sex](grade.Steer, grade.Bull),
	via[grade.Firmness](grade.VerySoft, grade.Firm),
	via[grade.Color](grade.VeryDarkRed, grade.LightCherryRed),
	via[grade.Texture](grade.VeryCoarse, grade.Fine),
	via[grade.DarkCut](grade.DarkThird, grade.DarkFull),
	via[placing.Order](placing.MustParseOrder("3-2-1-4"), placing.MustParseOrder("12-11-10-9-8-7-6-5-4-3-2-1")),
	via[placing.Cuts](placing.MustParseCuts("2-8-2"), placing.MustParseCuts("0")),
	via[placing.Official](mustOfficial("3-2-1-4 cuts 2-8-2")),
	via[placing.Card](placing.Card{Order: placing.MustParseOrder("3-2-1-4")}, placing.Card{Mark: placing.Blank}),
	via[placing.Mark](placing.Blank, placing.Unreadable),
	via[contest.Points](contest.PointsOf(0), contest.PointsOf(50), contest.PointsOf(-0.5)),
	via[placing.Ranking](class.MustParseRanking("3 1=2")),
	via[class.Site](each(class.FatRound)...),
	via[price.Mark](each(price.DairyType)...),
}

// each returns all values of an enumeration from its first.
func each[T interface {
	~uint8
	IsValid() bool
}](first T) (all []T) {
	for v := first; v.IsValid(); v++ {
		all = append(all, v)
	}
	return all
}

func mustOfficial(s string) placing.Official {
	o, err := placing.ParseOfficial(s)
	if err != nil {
		panic(err)
	}
	return o
}

func database(t *testing.T) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", filepath.Join(t.TempDir(), "types.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	db.SetMaxOpenConns(1)
	if _, err := db.Exec(`CREATE TABLE item (v TEXT) STRICT`); err != nil {
		t.Fatal(err)
	}
	return db
}

// sorts puts numbers into a numeric column, greatest first, and takes them out in the
// order of the column, which is that of the numbers.
func sorts[T comparable](values ...T) stored {
	return stored{reflect.TypeFor[T]().String(), func(t *testing.T, db *sql.DB) {
		if _, err := db.Exec(`DELETE FROM number`); err != nil {
			t.Fatal(err)
		}
		for _, v := range slices.Backward(values) {
			if _, err := db.Exec(`INSERT INTO number (v) VALUES (?)`, v); err != nil {
				t.Fatal(err)
			}
		}
		rows, err := db.Query(`SELECT v, typeof(v) FROM number ORDER BY v`)
		if err != nil {
			t.Fatal(err)
		}
		defer rows.Close()
		var got []T
		for rows.Next() {
			var v T
			var kind string
			if err := rows.Scan(&v, &kind); err != nil || kind != "real" && kind != "integer" {
				t.Fatalf("%v is kept as %s, %v", v, kind, err)
			}
			got = append(got, v)
		}
		if err := rows.Err(); err != nil || !slices.Equal(got, values) {
			t.Errorf("sorted: %v, %v; want %v", got, err, values)
		}
	}}
}

func TestNumbersSortAsNumbers(t *testing.T) {
	db := database(t)
	if _, err := db.Exec(`CREATE TABLE number (v NUMERIC)`); err != nil {
		t.Fatal(err)
	}
	for _, s := range []stored{
		sorts(grade.Inches(-0.1), grade.Inches(0), grade.Inches(0.05), grade.Inches(2)),
		sorts(grade.SquareInches(9.8), grade.SquareInches(12.4)),
		sorts(grade.Percent(2.5), grade.Percent(10)),
		sorts(grade.Pounds(842), grade.Pounds(1020.5)),
		sorts(grade.Grades(-2.38), grade.Grades(2.952), grade.Grades(11.02)),
		sorts(grade.ShortcutGrades(2.16), grade.ShortcutGrades(10)),
		sorts(contest.PointsOf(-2), contest.PointsOf(9.5), contest.PointsOf(41)),
	} {
		t.Run(s.name, func(t *testing.T) { s.run(t, db) })
	}
}

func TestEveryTypeThroughTheDatabase(t *testing.T) {
	db := database(t)
	for _, s := range types {
		t.Run(s.name, func(t *testing.T) { s.run(t, db) })
	}
}

// The list above has to hold every exported type of the library that has a Scan
// method.
func TestNoTypeLeftOut(t *testing.T) {
	listed := map[string]bool{}
	for _, s := range types {
		name, _, _ := strings.Cut(s.name, "[") // a generic type counts once
		listed[name] = true
	}
	found := 0
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if n := d.Name(); n == "internal" || n == "examples" || n == "testdata" || strings.HasPrefix(n, ".") && n != ".." {
				return fs.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		for _, name := range numbers(f) {
			if found++; !listed[name] {
				t.Errorf("%s is a number and is not in the list", name)
			}
		}
		for _, decl := range f.Decls {
			m, ok := decl.(*ast.FuncDecl)
			if !ok || m.Recv == nil || m.Name.Name != "Scan" {
				continue
			}
			star, ok := m.Recv.List[0].Type.(*ast.StarExpr)
			if !ok {
				continue
			}
			id, ok := star.X.(*ast.Ident)
			if !ok || !id.IsExported() {
				continue
			}
			found++
			if name := f.Name.Name + "." + id.Name; !listed[name] {
				t.Errorf("%s has a Scan method and is not in the list", name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if found < 30 {
		t.Errorf("only %d types found", found)
	}
	t.Logf("%d types, %d in the list", found, len(types))
}

// numbers are the exported types of a file that are made of an unexported one with a
// type parameter, from which they have their methods.
func numbers(f *ast.File) (names []string) {
	for _, decl := range f.Decls {
		g, ok := decl.(*ast.GenDecl)
		if !ok || g.Tok != token.TYPE {
			continue
		}
		for _, spec := range g.Specs {
			s := spec.(*ast.TypeSpec)
			t, ok := s.Type.(*ast.StructType)
			if !ok || !s.Name.IsExported() || len(t.Fields.List) != 1 || t.Fields.List[0].Names != nil {
				continue
			}
			if _, ok := t.Fields.List[0].Type.(*ast.IndexExpr); ok {
				names = append(names, f.Name.Name+"."+s.Name.Name)
			}
		}
	}
	return names
}

// Months and teeth may also be columns of integers.
func TestIntegerColumns(t *testing.T) {
	db := database(t)
	var m maturity.Months
	var n maturity.Teeth
	if err := db.QueryRow(`SELECT 29, 2`).Scan(&m, &n); err != nil || m != 29 || n != maturity.Incisors(2) {
		t.Errorf("%v, %v, %v", m, n, err)
	}
	if err := db.QueryRow(`SELECT 601`).Scan(&m); err == nil || m != 29 {
		t.Errorf("601 months: %v, %v", m, err)
	}
}
