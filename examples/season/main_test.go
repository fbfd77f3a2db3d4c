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

	"example.com/ribface/internal/golden"
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

func TestGolden(t *testing.T) {
	picture := filepath.Join(t.TempDir(), "bias.svg")
	golden.Compare(t, "testdata/season.txt", command(t, "-svg", picture))
	svg, err := os.ReadFile(picture)
	if err != nil {
		t.Fatal(err)
	}
	golden.Compare(t, "testdata/bias.svg", string(svg))
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("the drawing is not well formed: %v", err)
		}
	}
}

// TestSheets: what is written is read back to the same page, and so are the rows of
// every sheet in any order.
func TestSheets(t *testing.T) {
	dir := t.TempDir()
	want := command(t, "-seed", "3", "-member", "E2", "-cards", dir)
	_, want, _ = strings.Cut(want, "\n\n") // without the line that says it is invented
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
	got := command(t, "-from", dir, "-member", "Ada")
	for _, want := range []string{"== Standings of spring, of 100 points", "1     Ada        96        96", "2     Bo         47        47", "class heifers: placed 4-3-2-1, official 4-3-1-2 cuts 2-5-4: 46", "contest: 1: too few"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if strings.Contains(got, "marbling") || strings.Contains(got, "reasons") {
		t.Errorf("what nobody handed in stands in\n%s", got)
	}
	write(placings, estimates+"\nspring,north,1,Ada,Sm40,Choice-,2.9\nspring,south,1,Ada,Sl40,Select-,3.1\n", scores+"\nspring,reasons,heifers,Ada,41\n",
		officials, facts+"\nspring,north,1,Choice-,2.8\nspring,south,1,Select-,3.1\n")
	got = command(t, "-from", dir, "-member", "Ada")
	for _, want := range []string{"== Standings of spring, of 190 points", "marbling, 2 carcasses, 1 member", "reasons: class \"heifers\": 41 of 50"} {
		if !strings.Contains(got, want) {
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
	for _, tt := range []struct {
		name string
		args []string
		want string
	}{
		{"unknown flag", []string{"-x"}, "flag provided but not defined: -x"},
		{"argument", []string{"x"}, `"x": no arguments are taken, only flags`},
		{"unknown member", []string{"-member", "X"}, `member "X" has no cards in invented contest 8`},
		{"no sheets", []string{"-from", t.TempDir()}, "placings.csv: no such file or directory"},
		{"nowhere to write", []string{"-cards", filepath.Join(dir, "none")}, "placings.csv: no such file or directory"},
		{"nowhere to draw", []string{"-svg", filepath.Join(dir, "none", "x.svg")}, "x.svg: no such file or directory"},
		{"bad placing", []string{"-from", change("placings.csv", ",senior,", ",senior,9-")}, "placings.csv: line 2, column 6 (placing): order"},
		{"bad score", []string{"-from", change("scores.csv", ",senior,", ",senior,9")}, "reasons: 9"},
		{"no cuts", []string{"-from", change("officials.csv", "cuts", "cut")}, `officials.csv: line 1, column 4 (cut): column: "cut": unknown`},
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
	if _, err := (sheets{}).page("N1"); err == nil || err.Error() != "officials.csv: no contest" {
		t.Errorf("got %v", err)
	}
}

// TestGaps: a contest without a figure breaks the line.
func TestGaps(t *testing.T) {
	ok := season.Figure{Value: 0.25, N: 6}
	none := season.Figure{N: 1, Reason: season.TooFew}
	got := string(draw([]lean{{"A <1>", []season.Figure{ok, none, ok, ok}, []season.Figure{ok, none, ok, ok}}}, ""))
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

func TestCount(t *testing.T) {
	if a, b := count(1, "carcass", "carcasses"), count(2, "carcass", "carcasses"); a != "1 carcass" || b != "2 carcasses" {
		t.Errorf("%q, %q", a, b)
	}
}
