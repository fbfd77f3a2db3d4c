package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/golden"
	"github.com/google/go-cmp/cmp"
)

// compare compares text with a file of testdata, and holds it to a width.
func compare(t *testing.T, name, got string, width int) {
	t.Helper()
	for i, line := range strings.Split(got, "\n") {
		if n := len([]rune(line)); n > width {
			t.Errorf("%s: line %d has %d characters: %s", name, i+1, n, line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Errorf("%s: line %d ends in spaces: %q", name, i+1, line)
		}
	}
	golden.Compare(t, "testdata/"+name, got)
}

// command runs the program and gives what it printed.
func command(args ...string) (stdout, stderr string, err error) {
	var out, log strings.Builder
	err = run(args, &out, &log)
	return out.String(), log.String(), err
}

func sheetFrom(t *testing.T, args ...string) string {
	t.Helper()
	out, log, err := command(args...)
	if err != nil || log != "" {
		t.Fatalf("%v %s", err, log)
	}
	return out
}

// pageFrom runs the program and gives the page it wrote.
func pageFrom(t *testing.T, args ...string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "day.html")
	if out := sheetFrom(t, append(args, "-html", name)...); out != name+" written\n" {
		t.Errorf("printed %q", out)
	}
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// file writes a file for one test.
func file(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestInvented holds the first screen, the work and the page of the invented class to
// those that were looked at. The screen has at most 60 lines.
func TestInvented(t *testing.T) {
	screen := sheetFrom(t)
	compare(t, "screen.txt", screen, 80)
	if n := strings.Count(screen, "\n"); n > 60 {
		t.Errorf("the first screen has %d lines", n)
	}
	compare(t, "work.txt", sheetFrom(t, "-full"), width)
	golden.Compare(t, "testdata/day.html", pageFrom(t))
}

// TestNamed holds the page of a class named 101 to 104 with a whole walk to one that
// was looked at. Placings and rankings in names are those in numbers.
func TestNamed(t *testing.T) {
	args := []string{"-class", "testdata/named.csv", "-walk", "testdata/named-walk.csv", "-posted", "800 lb"}
	html := pageFrom(t, args...)
	golden.Compare(t, "testdata/named.html", html)
	_, picture, _ := strings.Cut(html, "The carcasses, seen from outside")
	if n := strings.Count(picture, "<circle"); n < 4*13 {
		t.Errorf("%d circles, want one for each site of fat", n)
	}
	officials := file(t, "o.csv", "contest,class,placing,cuts\n\n,x,104-103-102-101,2-3-4\n,x,4-3-2-1,2-3-4\n")
	cards := file(t, "k.csv", "contest,class,member,team,division,placing\n,x,Ada Quill,,,104-103-101-102\n,x,Bo Thistle,,,4-3-2-1\n,x,Cy Marsh,,,unreadable\n,x,Dell Rook,,,\n")
	out := sheetFrom(t, append(args, "-officials", officials, "-cards", cards)...)
	for _, want := range []string{"Official placing 104-103-102-101, cuts 2-3-4, by 2 officials, who all agree.", "Ada Quill   104-103-101-102     46  bottom pair", "Bo Thistle  104-103-102-101     50", "Cy Marsh    unreadable           0  no placing that can be read", "Dell Rook   blank                0  no placing marked", "- 101 is fatter than its rib shows"} {
		if !strings.Contains(out, want) {
			t.Errorf("missing %q in\n%s", want, out)
		}
	}
	if a, b := sheetFrom(t, append(args, "-order", "102-101-103-104")...), sheetFrom(t, append(args, "-order", "2-1-3-4")...); a != b || !strings.Contains(a, "Official placing 102-101-103-104,") {
		t.Errorf("by names and by numbers (-names +numbers):\n%s", cmp.Diff(a, b))
	}
}

// TestSpokenNumbers holds that findings and reasons have no number but those of
// exhibits, since names are put in their place.
func TestSpokenNumbers(t *testing.T) {
	for _, order := range []string{"1-2-3-4", "4-3-2-1", "2-4-1-3", "3-1-2-4"} {
		out := pageFrom(t, "-class", "testdata/named.csv", "-walk", "testdata/named-walk.csv", "-order", order)
		_, out, _ = strings.Cut(out, "Reasons, as a member might say them")
		out, _, _ = strings.Cut(out, "The score of every card")
		for _, n := range regexp.MustCompile(`\d+`).FindAllString(strings.ReplaceAll(out, "h2", ""), -1) {
			if len(n) != 3 || n < "101" || n > "104" {
				t.Errorf("%s: %s is no exhibit", order, n)
			}
		}
	}
}

// TestFull puts the work at the end of the page, and a file to read is not written
// over.
func TestFull(t *testing.T) {
	if alone := pageFrom(t, "-class", "testdata/named.csv"); !strings.Contains(alone, "Nobody walked over these carcasses.") || strings.Contains(alone, "A slip for each member") {
		t.Error("a class alone has no walk and no slips")
	}
	page := pageFrom(t, "-full")
	if _, work, ok := strings.Cut(page, "The work and its sources</h2>"); !ok || !strings.Contains(work, "5. Cuts, and the officials") {
		t.Error("the work is not at the end of the page")
	}
	in := file(t, "class.csv", "id\n")
	if _, _, err := command("-class", in, "-html", in); err == nil || !strings.Contains(err.Error(), "that is a file to read") {
		t.Errorf("%v", err)
	}
	if _, _, err := command("-html", filepath.Join(t.TempDir(), "no", "such.html")); err == nil {
		t.Error("a page in a folder that is not there")
	}
}

// TestFilesAreTheInvented reads the invented files from the disk: the same screen
// but for its title.
func TestFilesAreTheInvented(t *testing.T) {
	_, own, _ := strings.Cut(sheetFrom(t), "\n")
	got := sheetFrom(t, "-class", "class.csv", "-walk", "walk.csv", "-officials", "officials.csv", "-cards", "cards.csv", "-posted", "800 lb")
	if d := cmp.Diff("class\n"+own, got); d != "" {
		t.Errorf("from files (-want +got):\n%s", d)
	}
}

// TestWalkOfScores reads the invented walk as scores, the fattest or the heaviest
// muscled the highest: the same sheet.
func TestWalkOfScores(t *testing.T) {
	args := []string{"-class", "class.csv", "-officials", "officials.csv", "-cards", "cards.csv", "-posted", "800 lb", "-walk"}
	scores := file(t, "scores.csv", `site,scores
plumpness of round,8 9 7 5
cushion of round,3 4 3 0
fat over rump,9 2 4 7
fat in cod or udder,5 1 2 5
fat over loin edge,6 1 2 9
muscling of loin,20 30 10 -5
fat over clod,4 1 2 3
fat in brisket,4  1 2 3
`)
	if d := cmp.Diff(sheetFrom(t, append(args, "walk.csv", "-full")...), sheetFrom(t, append(args, scores, "-full")...)); d != "" {
		t.Errorf("(-rankings +scores):\n%s", d)
	}
}

// TestOrder holds that reasons, cuts and feedback follow a placing that a committee
// has settled against the policy and its own officials.
func TestOrder(t *testing.T) {
	out := sheetFrom(t, "-full", "-order", "4-3-2-1")
	_, reasons, _ := strings.Cut(out, "\n6. Reasons\n")
	reasons, rest, _ := strings.Cut(reasons, "\n7. What if\n")
	_, cards, _ := strings.Cut(rest, "\n9. The cards\n")
	for _, s := range []string{"Official, as given: 4-3-2-1 cuts", "Top pair, 4 over 3, on none:", "The policy has it the other way: 3 over 4 by quality tier", "In the bottom pair it was cutability that put 2 over 1."} {
		if !strings.Contains(out, s) {
			t.Errorf("missing %q", s)
		}
	}
	// Whatever is not granted, and whatever a card missed, is said for the order.
	for _, line := range strings.Split(reasons+cards, "\n") {
		var a, b int
		if n, _ := fmt.Sscanf(line, "  - %d over %d,", &a, &b); n == 2 && a < b {
			t.Errorf("argues for %d over %d: %s", a, b, line)
		}
	}
	// Without officials the cuts come from the policy's margins, and a pair that
	// the policy would turn counts nothing.
	alone := sheetFrom(t, "-full", "-class", "class.csv", "-posted", "800 lb", "-order", "4-3-2-1")
	if !strings.Contains(alone, "from margins of 0, 0.384, 0 yield grades between neighbors") || !strings.Contains(alone, "Official, as given: 4-3-2-1 cuts 1-4-1.") {
		t.Errorf("cuts of the policy in\n%s", alone)
	}
}

// lots reads the eight published lots (uf-mimeo-table4) as a class sheet, with
// maturity and marbling as the reference table reads them: a lot's third of a
// degree as its middle. The lots are means; steers are assumed, and the maturity
// of a lot stands for skeletal and lean alike.
func lots(t *testing.T) (sheet string, stated []string) {
	t.Helper()
	var b strings.Builder
	b.WriteString("id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n")
	for _, row := range refs.Rows(t, "../../testdata/references", "lots-with-quality.csv") {
		number := func(name, unit string) string {
			n, ok := strings.CutSuffix(row.Get(name), unit)
			if !ok {
				t.Fatalf("%s %q is not in %s", name, row.Get(name), unit)
			}
			return n
		}
		if row.Get("source_id") != "uf-mimeo-table4" {
			t.Fatalf("a lot of %s", row.Get("source_id"))
		}
		fmt.Fprintf(&b, "%s,steer,%s,%s,%s,%s,%s,%s,%s\n", row.Get("subject"), row.Get("maturity_read"), row.Get("maturity_read"), row.Get("marbling_read"),
			number("fat", " in"), number("rea", " sq in"), number("kph", "%"), number("weight", " lb"))
		stated = append(stated, row.Get("stated_yield_grade"))
	}
	return b.String(), stated
}

// TestPublishedLots runs the eight published lots through the program and compares
// the whole yield grades with those printed. One differs and is kept: lot 33 has
// 2.963 and is printed as 3, which hot weight in place of chilled explains
// (derived).
func TestPublishedLots(t *testing.T) {
	sheet, stated := lots(t)
	compare(t, "lots.csv", sheet, width)
	out := sheetFrom(t, "-full", "-class", filepath.Join("testdata", "lots.csv"))
	compare(t, "lots.txt", out, width)
	var differ []string
	for i, want := range stated {
		_, rest, ok := strings.Cut(out, fmt.Sprintf("\nExhibit %d: ", i+1))
		if !ok {
			t.Fatalf("no exhibit %d", i+1)
		}
		line, _, _ := strings.Cut(rest, "\n")
		if !strings.HasSuffix(line, "yield grade "+want) {
			differ = append(differ, fmt.Sprintf("lot %d: %s, printed %s", 31+i, line, want))
		}
	}
	if d := cmp.Diff([]string{"lot 33: Average Choice, yield grade 2, printed 3"}, differ); d != "" {
		t.Errorf("differences (-want +got):\n%s", d)
	}
}

func TestSheets(t *testing.T) {
	header := "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n"
	two := file(t, "two.csv", header+"2,steer,A60,A50,Sm40,0.5,13.0,2.5,800\n1,steer,A60,A50,Sm40,0.5,13.0,2.5,800\n")
	cycle := file(t, "cycle.csv", header+"1,steer,A60,A50,SlAb20,0.8,12.0,3.5,800\n2,steer,A60,A50,Md10,0.5,12.5,2.05,800\n3,steer,A60,A50,Sm30,0.3,14.0,1.95,800\n")
	light := file(t, "light.csv", header+"1,steer,A60,A50,Sm40,0.3,9,2.5,380\n2,steer,A60,A50,Sm50,0.3,9,2.5,390\n")
	thin := file(t, "thin.csv", header+"1,steer,A60,A50,Sm40,0.05,13,2.5,800\n2,steer,A60,A50,Sm50,0.4,13,2.5,800\n")
	swap := file(t, "swap.csv", "site,ranking\nfat over rump,1 2\nmuscling of loin,1=2\n")
	split := file(t, "split.csv", "contest,class,placing,cuts\n,x,1-2,9\n,x,2-1,5\n")
	metric := file(t, "metric.csv", "id,sex,skeletal,lean,marbling,fat_mm,ribeye_sq_cm,kph_pct,weight_kg\na,steer,A60,A50,Sm40,12.7,84,2.5,363\nb,heifer,A60,A50,Sl40,7.6,90,2.0,360\n")
	cards := file(t, "cards.csv", "contest,class,member,team,division,placing\n,x,Ada Quill,,,2-1\n,x,Bo Thistle,,,\n,x,Cy Marsh,,,unreadable\n")
	tests := []struct {
		name string
		args []string
		want []string // each must stand in the sheet
		not  []string
	}{
		{"two alike", []string{"-class", two}, []string{"Placed 1-2.", "1 and 2 cannot be told apart by the policy.", "2 orders are equal by that count", "Nobody walked over these carcasses.", "- nothing in the data.", "- the worst of the class in nothing alone.", "1 and 2: the policy cannot tell them apart; any change would.", "No pair could then go the other way."}, []string{"9. The cards", "Note:", "each alone"}},
		{"a cycle", []string{"-class", cycle}, []string{"Placed 1-2-3.", "The policy runs in a cycle: 1 over 2, 2 over 3 and 3 over 1.", "the placing goes against 3 over 1", "Close: 3 and 1. Expect officials to differ.", "Taken as official here, from the policy: 1-2-3 cuts 3-5."}, nil},
		{"no price", []string{"-class", light}, []string{"Not every exhibit has a price on this grid: exhibit 1: weight"}, []string{"By value"}},
		{"fat that cannot be", []string{"-class", thin, "-walk", swap}, []string{"1 is fatter than its rib shows, over the rump.", "2 is trimmer than its rib shows, over the rump.", "adjust the fat of 2 down", "muscling of loin 1=2"}, nil},
		{"trim over the rest", []string{"-class", file(t, "t.csv", header+"1,steer,A60,A50,Sm40,0.05,13,2.5,800\n2,steer,A60,A50,Sm50,0.04,13,2.5,800\n"), "-walk", file(t, "w.csv", "site,ranking\nfat over rump,2 1\n")}, []string{"Adjusted by -0.1 in: exhibit 1: adjusted fat: -0.05 in: out of range"}, nil},
		{"officials who split", []string{"-class", two, "-officials", split}, []string{"2 officials, each alone:", "They agree best on 1-2; counted over all of them, pairs the other way round: 1; 2 orders are as good, and the chair decides", "Kendall's W 0.00, mean tau -1.00", "Official, from the officials: 1-2 cuts"}, nil},
		{"one official", []string{"-class", two, "-officials", file(t, "one.csv", "contest,class,placing,cuts\n,x,2-1,9\n")}, []string{"1 official, each alone:", "Official, from the officials: 2-1 cuts 9."}, []string{"Kendall"}},
		{"as given, and negative", []string{"-class", cycle, "-order", "3-2-1", "-cuts", "20-20"}, []string{"Official, as given: 3-2-1 cuts 20-20.", "With these cuts a card can score below zero."}, nil},
		{"given cuts of zero have no words", []string{"-class", cycle, "-cuts", "0-5"}, []string{"top pair, 1 over 2: 0."}, nil},
		{"metric with names", []string{"-class", metric, "-cards", cards}, []string{"Exhibit 1 is a.", "Exhibit 2 is b.", "Ada Quill: 2-1, scores", "Bo Thistle: blank, scores 0", "Cy Marsh: unreadable, scores 0"}, nil},
		{"another edition and base", []string{"-class", metric, "-edition", "1987", "-base", "250"}, []string{"Graded by the 1987 edition", "At a base of $250 per cwt"}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out := sheetFrom(t, append(tt.args, "-full")...)
			flat := strings.Join(strings.Fields(out), " ")
			for _, s := range tt.want {
				if !strings.Contains(flat, strings.Join(strings.Fields(s), " ")) {
					t.Errorf("missing %q in\n%s", s, out)
				}
			}
			for _, s := range tt.not {
				if strings.Contains(flat, s) {
					t.Errorf("%q stands in\n%s", s, out)
				}
			}
		})
	}
}

func TestRefused(t *testing.T) {
	header := "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n"
	good := header + "1,steer,A60,A50,Sm40,0.5,13.0,2.5,800\n2,steer,A60,A50,Sm40,0.5,13.0,2.5,800\n"
	class := file(t, "class.csv", good)
	tests := []struct {
		name string
		args []string
		want []string // each must stand in the error
	}{
		{"no such file", []string{"-class", "no-such.csv"}, []string{"no-such.csv"}},
		{"a bad cell", []string{"-class", file(t, "c.csv", header+"1,steer,A60,A50,Sm4,0.5,13.0,2.5,800\n2,ox,A60,A50,Sm40,0.5,13.0,2.5,800\n")}, []string{"line 2, id 1, column 5 (marbling)", "line 3, id 2, column 2 (sex)"}},
		{"no header", []string{"-class", file(t, "c.csv", "")}, []string{"line 1"}},
		{"one exhibit", []string{"-class", file(t, "c.csv", header+"1,steer,A60,A50,Sm40,0.5,13.0,2.5,800\n")}, []string{"exhibits: 1: out of range; allowed: 2 to 12"}},
		{"a number twice", []string{"-class", file(t, "c.csv", strings.Replace(good, "\n2,", "\n1,", 1))}, []string{"exhibit number: 1: repeated"}},
		{"an unknown site", []string{"-class", class, "-walk", file(t, "w.csv", "site,ranking\nfat over tail,1 2\n")}, []string{"line 2, column 1 (site)", `"fat over tail": unknown`}},
		{"a bad ranking", []string{"-class", class, "-walk", file(t, "w.csv", "site,ranking\nfat over rump,1 1\nfat over hip,1 2 3\n")}, []string{"line 2, column 2 (ranking)", "line 3, column 2 (ranking)"}},
		{"a site twice", []string{"-class", class, "-walk", file(t, "w.csv", "site,ranking\nfat over rump,1 2\nfat over rump,1 2\n")}, []string{"line 3, column 1 (site)", "repeated"}},
		{"a walk of other columns", []string{"-class", class, "-walk", file(t, "w.csv", "site,order\n")}, []string{"line 1: the columns are site,ranking"}},
		{"a bad score", []string{"-class", class, "-walk", file(t, "w.csv", "site,scores\nfat over rump,1 x\nfat over hip,1\nfat over neck,1 2 3\n")}, []string{"line 2, column 2 (scores): scores: \"x\": no whole number", "line 3, column 2 (scores): scores: 1 score: out of range", "line 4, column 2 (scores): fat over neck"}},
		{"an empty walk", []string{"-class", class, "-walk", file(t, "w.csv", "")}, []string{"line 1: the columns are site,ranking"}},
		{"a walk with too many cells", []string{"-class", class, "-walk", file(t, "w.csv", "site,ranking\nfat over rump,1,2\n")}, []string{"line 2: 3 cells"}},
		{"a walk that is no CSV", []string{"-class", class, "-walk", file(t, "w.csv", "site,ranking\n\"fat,1 2\n")}, []string{"line"}},
		{"a header that is no CSV", []string{"-class", class, "-walk", file(t, "w.csv", "\"site,ranking\n")}, []string{"line"}},
		{"a bad card", []string{"-class", class, "-cards", file(t, "k.csv", "contest,class,member,team,division,placing\n,x,Ada Quill,,,2-2\n")}, []string{"line 2, column 6 (placing)"}},
		{"a card of another size", []string{"-class", class, "-cards", file(t, "k.csv", "contest,class,member,team,division,placing\n,x,Ada Quill,,,2-1-3\n")}, []string{"card of Ada Quill: 2-1-3 places 3 exhibits; the class has 2"}},
		{"an official of another size", []string{"-class", class, "-officials", file(t, "o.csv", "contest,class,placing,cuts\n,x,2-1-3,2-2\n")}, []string{"official 1: 2-1-3 places 3 exhibits; the class has 2"}},
		{"an official that cannot be read", []string{"-class", class, "-officials", file(t, "o.csv", "contest,class,placing,cuts\n,x,2-2,2\n")}, []string{"line 2, column 3 (placing)"}},
		{"no officials", []string{"-class", class, "-officials", file(t, "o.csv", "contest,class,placing,cuts\n")}, []string{"votes: missing"}},
		{"an order of another size", []string{"-class", class, "-order", "1-2-3"}, []string{"-order 1-2-3: the class has 2 exhibits"}},
		{"an order of some names", []string{"-class", "testdata/named.csv", "-order", "101-102-103-9"}, []string{"-order 101-102-103-9", "9 is no exhibit; allowed: the names 101, 102, 103, 104"}},
		{"a card of some names", []string{"-class", "testdata/named.csv", "-cards", file(t, "k.csv", "contest,class,member,team,division,placing\n,x,Ada Quill,,,101-102-103-9\n")}, []string{"line 2, column 6 (placing)", "9 is no exhibit"}},
		{"an official of some names", []string{"-class", "testdata/named.csv", "-officials", file(t, "o.csv", "contest,class,placing,cuts\n,x,101-102-103-9,1-1-1\n")}, []string{"line 2, column 3 (placing)", "9 is no exhibit"}},
		{"no order", []string{"-order", "first"}, []string{"-order first"}},
		{"cuts of another size", []string{"-class", class, "-cuts", "1-2-3"}, []string{"-cuts: cuts: 1-2-3: out of range"}},
		{"a base of nothing", []string{"-class", class, "-base", "0"}, []string{"base"}},
		{"a weight without sense", []string{"-posted", "heavy"}, []string{"heavy"}},
		{"a negative posted weight", []string{"-posted", "-800"}, []string{"weight: -800 lb"}},
		{"a walk alone", []string{"-walk", "walk.csv"}, []string{"-walk, -officials and -cards go with -class"}},
		{"a file without a flag", []string{"class.csv"}, []string{"class.csv: files are given by"}},
		{"an unknown flag", []string{"-wine"}, []string{"wine"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out, _, err := command(tt.args...)
			if err == nil {
				t.Fatalf("no error:\n%s", out)
			}
			if out != "" {
				t.Errorf("printed besides the error:\n%s", out)
			}
			for _, s := range tt.want {
				if !strings.Contains(err.Error(), s) {
					t.Errorf("error %q does not have %q", err, s)
				}
			}
		})
	}
}
