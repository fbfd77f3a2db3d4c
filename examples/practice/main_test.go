package main

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/placing/practice"
)

func command(t *testing.T, args ...string) string {
	t.Helper()
	var out bytes.Buffer
	if err := run(args, &out, io.Discard); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestGolden holds a sheet and its key, and the pages of a set, to what was looked
// at.
func TestGolden(t *testing.T) {
	golden.Compare(t, "testdata/sheet.txt", command(t, "-seed", "7", "-difficulty", "medium"))
	golden.Compare(t, "testdata/key.txt", command(t, "-seed", "7", "-difficulty", "medium", "-key"))
	dir := t.TempDir()
	for _, tt := range []struct {
		file string
		args []string
	}{{"sheets.html", nil}, {"keys.html", []string{"-key", "-full"}}} {
		file := filepath.Join(dir, tt.file)
		command(t, append([]string{"-seed", "7", "-classes", "2", "-html", file}, tt.args...)...)
		got, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		_, body, _ := strings.Cut(string(got), "</style>")
		golden.Compare(t, "testdata/"+tt.file, body)
	}
}

// TestScreen: a sheet and its key fit one screen of 80 columns and 40 lines.
func TestScreen(t *testing.T) {
	for _, args := range [][]string{{"-seed", "5"}, {"-seed", "5", "-key"}, {"-seed", "9", "-exhibits", "6"}} {
		lines := strings.Split(command(t, args...), "\n")
		if len(lines) > 40 {
			t.Errorf("%v: %d lines", args, len(lines))
		}
		for _, l := range lines {
			if len(l) > 80 {
				t.Errorf("%v: %d columns: %s", args, len(l), l)
			}
		}
	}
}

// TestApart: the sheet for members tells nothing of the key, and the set has the
// classes of its seeds.
func TestApart(t *testing.T) {
	sheet := command(t, "-seed", "7", "-classes", "2")
	for _, seed := range []uint64{7, 8} {
		c, err := practice.Make(seed, practice.Spec{})
		if err != nil {
			t.Fatal(err)
		}
		for _, secret := range []string{c.Official.Order().String(), c.Official.Cuts().String(), "Choice", "Select"} {
			if strings.Contains(sheet, secret) {
				t.Errorf("the sheet has %q of class %d", secret, seed)
			}
		}
		key := command(t, "-seed", "7", "-classes", "2", "-key")
		if want := "Placing " + c.Official.Order().String() + ", cuts " + c.Official.Cuts().String(); !strings.Contains(key, want) {
			t.Errorf("no %q in the key", want)
		}
	}
	if full := command(t, "-key", "-full"); !strings.Contains(full, "[official: cfr-54-105]") {
		t.Error("the work has no sources")
	}
	if !strings.Contains(command(t, "-key", "-herd", "trial"), "Drawn from marbling trial 2010") {
		t.Error("another herd was asked for")
	}
}

// TestClassFile: the class that is written is the class of the sheet.
func TestClassFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "class.csv")
	command(t, "-seed", "3", "-csv", file)
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	exhibits, names, err := classfile.Read(f)
	if err != nil || names != nil {
		t.Fatal(names, err)
	}
	c, err := practice.Make(3, practice.Spec{})
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range exhibits {
		if want := c.Graded.Assessment(i + 1).Carcass; e.Carcass != want {
			t.Errorf("%+v, want %+v", e.Carcass, want)
		}
	}
}

func TestRefused(t *testing.T) {
	for _, tt := range []struct {
		args []string
		want string
	}{
		{[]string{"x"}, `"x": no arguments are taken, only flags`},
		{[]string{"-classes", "0"}, "-classes 0: allowed: 1 to 50"},
		{[]string{"-classes", "51"}, "-classes 51: allowed: 1 to 50"},
		{[]string{"-full"}, "-full goes with -key"},
		{[]string{"-csv", "x", "-classes", "2"}, "-csv writes one class"},
		{[]string{"-csv", "no such folder/x"}, "no such folder"},
		{[]string{"-html", "no such folder/x"}, "no such folder"},
		{[]string{"-herd", "fed"}, `-herd "fed": 3 herds have these words; there are: marbling trial 2010; fed cattle 2011`},
		{[]string{"-exhibits", "13"}, "exhibits: 13: out of range"},
		{[]string{"-shape", "round"}, "shape"},
	} {
		err := run(tt.args, io.Discard, io.Discard)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%v: %v, want %q in it", tt.args, err, tt.want)
		}
	}
	if err := run([]string{"-h"}, io.Discard, io.Discard); !errors.Is(err, flag.ErrHelp) {
		t.Errorf("%v", err)
	}
}
