package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
	"github.com/google/go-cmp/cmp"
)

func command(t *testing.T, args ...string) string {
	t.Helper()
	var out bytes.Buffer
	if err := run(args, &out, io.Discard); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestGolden holds what is printed for the coach and for one member, the statistics,
// the drawing and the pages to what was looked at.
func TestGolden(t *testing.T) {
	dir := t.TempDir()
	picture := filepath.Join(dir, "bias.svg")
	golden.Compare(t, "testdata/coach.txt", command(t, "-svg", picture))
	golden.Compare(t, "testdata/member.txt", command(t, "-member", "N3"))
	golden.Compare(t, "testdata/stats.txt", command(t, "-stats"))
	svg := read1(t, picture)
	golden.Compare(t, "testdata/bias.svg", svg)
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("the drawing is not well formed: %v", err)
		}
	}
	if got, want := command(t, "-html", dir, "-stats"), filepath.Join(dir, "coach.html")+" and 7 members' pages written\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	for _, name := range []string{"coach.html", "member-5.html"} {
		_, body, _ := strings.Cut(read1(t, filepath.Join(dir, name)), "</style>")
		golden.Compare(t, "testdata/"+name, body)
	}
}

// flat puts the words of a page on one line, wherever it breaks them.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

func read1(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// TestScreen: both pages fit a screen of 80 columns and 48 lines without statistics.
func TestScreen(t *testing.T) {
	for _, args := range [][]string{nil, {"-member", "N4"}} {
		lines := strings.Split(command(t, args...), "\n")
		if len(lines) > 48 {
			t.Errorf("%v: %d lines", args, len(lines))
		}
		for _, l := range lines {
			if len(l) > 80 {
				t.Errorf("%v: %d columns: %s", args, len(l), l)
			}
		}
	}
}

// TestStatsOfMember: the figures of one member alone are added to the page.
func TestStatsOfMember(t *testing.T) {
	got := command(t, "-member", "E2", "-stats")
	if !strings.Contains(got, "member E2\n") || strings.Contains(got, "member N1\n") || !strings.Contains(got, "root mean square") {
		t.Errorf("no figures of E2 alone in\n%s", got)
	}
}

// TestSheets: what is written is read back to the same page, and so are the rows of
// every sheet in any order.
func TestSheets(t *testing.T) {
	dir := t.TempDir()
	want := command(t, "-seed", "3", "-member", "E2", "-cards", dir)
	want = strings.Replace(want, invented+"\n", "", 1)
	if got := command(t, "-member", "E2", "-from", dir); got != want {
		t.Errorf("read back (-want +got):\n%s", cmp.Diff(want, got))
	}
	r := rand.New(rand.NewPCG(5, 5))
	for _, name := range sheetNames {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		rows := strings.SplitAfter(string(text), "\n")
		rows = rows[:len(rows)-1]
		r.Shuffle(len(rows)-1, func(i, j int) { rows[i+1], rows[j+1] = rows[j+1], rows[i+1] })
		if err := os.WriteFile(filepath.Join(dir, name), []byte(strings.Join(rows, "")), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got := command(t, "-member", "E2", "-from", dir); got != want {
		t.Errorf("shuffled (-want +got):\n%s", cmp.Diff(want, got))
	}
}

// TestOwnSheets: a coach with placings alone gets a page, and so does one with two
// grading classes and reasons on a class of his own naming.
func TestOwnSheets(t *testing.T) {
	dir := t.TempDir()
	write := func(texts ...string) {
		t.Helper()
		for i, text := range texts {
			if err := os.WriteFile(filepath.Join(dir, sheetNames[i]), []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	const (
		placings  = "contest,class,member,placing\nspring,steers,Ada,1-2-3-4\nspring,steers,Bo,2-1-3-4\nspring,heifers,Ada,4-3-2-1\n"
		officials = "contest,class,placing,cuts\nspring,steers,1-2-3-4,3-5-3\nspring,heifers,4-3-1-2,2-5-4\n"
		estimates = "contest,class,exhibit,member,marbling,quality,yield"
		scores    = "contest,component,class,member,score"
		facts     = "contest,class,exhibit,quality,yield"
	)
	write(placings, estimates+"\n", scores+"\n", officials, facts+"\n")
	got := command(t, "-from", dir)
	for _, want := range []string{"1  Ada               96    96", "2  Bo                47    47", "spring, heifers: 1 over 2 reversed on 1 of 1 card, 4 points."} {
		if !strings.Contains(flat(got), flat(want)) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if strings.Contains(got, "marbling") || strings.Contains(got, "reasons") || strings.Contains(got, "yield") {
		t.Errorf("what nobody handed in stands in\n%s", got)
	}
	// The sheets of a header alone may as well not be there.
	for _, name := range []string{"estimates.csv", "scores.csv", "facts.csv"} {
		if err := os.Remove(filepath.Join(dir, name)); err != nil {
			t.Fatal(err)
		}
	}
	if again := command(t, "-from", dir); again != got {
		t.Errorf("without the empty sheets (-want +got):\n%s", cmp.Diff(got, again))
	}
	if got := command(t, "-from", dir, "-member", "Ada"); !strings.Contains(got, "You are 1st of 2 over 1 contest, with 96 of 100 points.") || !strings.Contains(got, "Class heifers: 1 goes over 2; you had it the other way: 4 points.") {
		t.Errorf("the page of Ada:\n%s", got)
	}
	html := t.TempDir()
	command(t, "-from", dir, "-html", html)
	if page := read1(t, filepath.Join(html, "coach.html")); strings.Contains(page, "<svg") {
		t.Error("a drawing without any yield")
	}
	write(placings, estimates+"\nspring,north,1,Ada,Sm40,Choice-,2.9\nspring,south,1,Ada,Sl40,Select-,3.1\n", scores+"\nspring,reasons,heifers,Ada,41\n",
		officials, facts+"\nspring,north,1,Choice-,2.8\nspring,south,1,Select-,3.1\n")
	got = command(t, "-from", dir, "-member", "Ada", "-stats")
	for _, want := range []string{"with 176 of 190 points", "reasons       41   50", "exhibit 1: yield grade 2.8; you said 2.9: 1 point."} {
		if !strings.Contains(flat(got), flat(want)) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	// Grading alone, without any placing.
	alone := t.TempDir()
	for name, text := range map[string]string{"estimates.csv": estimates + "\nfall,north,1,Cy,Sm40,Choice-,2.9\n", "facts.csv": facts + "\nfall,north,1,Choice-,2.9\n"} {
		if err := os.WriteFile(filepath.Join(alone, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got := command(t, "-from", alone, "-member", "Cy"); !strings.Contains(got, "Nothing. Every card scored in full.") {
		t.Errorf("the page of Cy:\n%s", got)
	}
	if got := command(t, "-from", alone, "-stats"); !strings.Contains(got, "Nothing: every card scored in full.") || strings.Contains(got, "Kendall") {
		t.Errorf("the page for the coach:\n%s", got)
	}
}

// TestAway: a member who was away from the last contest, and one whose cards do not
// count, are told so.
func TestAway(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"placings.csv":  "contest,class,member,placing\na,steers,Ada,1-2-3-4\na,steers,Bo,1-2-3-4\nb,steers,Bo,double-marked\n",
		"officials.csv": "contest,class,placing,cuts\na,steers,1-2-3-4,3-5-3\nb,steers,1-2-3-4,3-5-3\n",
		"estimates.csv": "contest,class,exhibit,member,quality,yield\nb,north,1,Bo,blank,blank\n",
		"facts.csv":     "contest,class,exhibit,quality,yield\nb,north,1,Choice-,2.8\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got := command(t, "-from", dir, "-member", "Ada"); !strings.Contains(got, "You handed in no cards.") {
		t.Errorf("Ada:\n%s", got)
	}
	got := command(t, "-from", dir, "-member", "Bo")
	for _, want := range []string{"You are 1st of 2", "Class steers: no placing that counts: 38 points.", "Low Choice; you gave no quality grade that counts: 10 points.", "yield grade 2.8; you gave none that counts: 10 points."} {
		if !strings.Contains(flat(got), flat(want)) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

func TestRefused(t *testing.T) {
	dir := t.TempDir()
	command(t, "-cards", dir)
	change := func(name, old, new string) string {
		t.Helper()
		to := t.TempDir()
		for _, n := range sheetNames {
			text, err := os.ReadFile(filepath.Join(dir, n))
			if err != nil {
				t.Fatal(err)
			}
			s := string(text)
			if n == name {
				if s = strings.Replace(s, old, new, 1); s == string(text) {
					t.Fatalf("%s has no %q", name, old)
				}
			}
			if err := os.WriteFile(filepath.Join(to, n), []byte(s), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		return to
	}
	folder := t.TempDir()
	if err := os.Mkdir(filepath.Join(folder, "placings.csv"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name string
		args []string
		want string
	}{
		{"unknown flag", []string{"-x"}, "flag provided but not defined: -x"},
		{"argument", []string{"x"}, `"x": no arguments are taken, only flags`},
		{"unknown member", []string{"-member", "X"}, `member "X" has no cards in the season; there are: E1, N2`},
		{"no sheets", []string{"-from", t.TempDir()}, "none of the sheets placings.csv, estimates.csv, scores.csv, officials.csv, facts.csv is there"},
		{"a sheet that is a folder", []string{"-from", folder}, "placings.csv"},
		{"nowhere for pages", []string{"-html", filepath.Join(dir, "none")}, "member-1.html: no such file or directory"},
		{"nowhere to write", []string{"-cards", filepath.Join(dir, "none")}, "placings.csv: no such file or directory"},
		{"nowhere to draw", []string{"-svg", filepath.Join(dir, "none", "x.svg")}, "x.svg: no such file or directory"},
		{"bad placing", []string{"-from", change("placings.csv", ",senior,", ",senior,9-")}, "placings.csv: line 2, column 6 (placing): placing"},
		{"bad score", []string{"-from", change("scores.csv", ",senior,", ",senior,9")}, "reasons: 9"},
		{"no cuts", []string{"-from", change("officials.csv", "cuts", "cut")}, `officials.csv: line 1, column 4 (cut): column: cut: unknown`},
		{"estimate of no exhibit", []string{"-from", change("estimates.csv", "coolers,1,", "coolers,9,")}, "exhibit: 9: unknown"},
		{"two cards", []string{"-from", change("placings.csv", "beef 1,N2", "beef 1,N1")}, "repeated"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			err := run(tt.args, io.Discard, io.Discard)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got %v, want %q in it", err, tt.want)
			}
		})
	}
	if err := run([]string{"-h"}, io.Discard, io.Discard); !errors.Is(err, flag.ErrHelp) {
		t.Errorf("got %v", err)
	}
	if _, err := (sheets{}).result(); err == nil || err.Error() != "no contest: the sheets have no rows" {
		t.Errorf("got %v", err)
	}
}

// TestKeysAlone: a season in which nobody has handed in anything is told so.
func TestKeysAlone(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "officials.csv"), []byte("contest,class,placing,cuts\na,steers,1-2-3-4,3-5-3\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := run([]string{"-from", dir}, io.Discard, io.Discard); err == nil || err.Error() != "no cards: the sheets have keys alone" {
		t.Errorf("%v", err)
	}
}

// TestGaps: a contest without a figure breaks the line.
func TestGaps(t *testing.T) {
	ok := season.Figure{Value: 0.25, N: 6}
	none := season.Figure{N: 1, Reason: season.TooFew}
	got := string(draw([]*member{{Member: contest.Member{ID: "A <1>"}, bias: []season.Figure{ok, none, ok, ok}, spread: []season.Figure{ok, none, ok, ok}}}, 4))
	if n := strings.Count(got, "<polyline"); n != 2 {
		t.Errorf("%d lines, want 2 pieces", n)
	}
	if n := strings.Count(got, "<circle"); n != 3 {
		t.Errorf("%d points, want 3", n)
	}
	if !strings.Contains(got, "A &lt;1&gt;") {
		t.Error("a name is not escaped")
	}
}

func TestPlace(t *testing.T) {
	for n, want := range map[int]string{1: "1st", 2: "2nd", 3: "3rd", 4: "4th", 11: "11th", 12: "12th", 13: "13th", 21: "21st", 112: "112th"} {
		if got := place(n); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// TestPercent: shares go to the nearest.
func TestPercent(t *testing.T) {
	for _, tt := range [][3]int64{{1, 3, 33}, {2, 3, 67}, {1, 200, 1}, {0, 0, 0}, {5, 5, 100}} {
		if got := percent(tt[0], tt[1]); got != tt[2] {
			t.Errorf("%d of %d: %d, want %d", tt[0], tt[1], got, tt[2])
		}
	}
}

// TestRank: members with the same points share a rank and stand in order of name.
func TestRank(t *testing.T) {
	r := result{}
	for id, n := range map[string]int64{"b": 5, "a": 5, "c": 9, "d": 1} {
		r.members = append(r.members, &member{Member: contest.Member{ID: id}, scored: n})
	}
	r.rank()
	var got []string
	for _, m := range r.members {
		got = append(got, place(m.rank)+" "+m.ID)
	}
	if d := cmp.Diff([]string{"1st c", "2nd a", "2nd b", "4th d"}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}
