package pagetest

import (
	"bytes"
	"context"
	_ "embed"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

//go:embed check.js
var check string

// browser starts a browser, or skips where there is none.
func browser(t *testing.T) context.Context {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		t.Skip("NOT CHECKED: no chromium on this machine; apt-get install chromium")
	}
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU)...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 9*time.Minute)
	t.Cleanup(cancel)
	if err := chromedp.Run(ctx); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// run makes pages with an example.
func run(t *testing.T, args ...string) {
	t.Helper()
	cmd := exec.Command("go", append([]string{"run"}, args...)...)
	cmd.Dir = filepath.Join("..", "..", "..")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("go run %s: %v\n%s", strings.Join(args, " "), err, out)
	}
}

// address is that of a file.
func address(t *testing.T, file string) string {
	t.Helper()
	abs, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	return (&url.URL{Scheme: "file", Path: abs}).String()
}

// problems opens a page at a width, does what is to be done there, and returns what
// the check finds, and what the page asked for besides itself.
func problems(t *testing.T, ctx context.Context, here string, width int64, do ...chromedp.Action) (bad, asked []string) {
	t.Helper()
	tab, cancel := chromedp.NewContext(ctx)
	defer cancel()
	chromedp.ListenTarget(tab, func(e any) {
		if r, ok := e.(*network.EventRequestWillBeSent); ok && r.Request.URL != here && !strings.HasPrefix(r.Request.URL, "data:") {
			asked = append(asked, r.Request.URL)
		}
	})
	do = append([]chromedp.Action{network.Enable(), chromedp.EmulateViewport(width, 844), chromedp.Navigate(here)}, do...)
	if err := chromedp.Run(tab, append(do, chromedp.Evaluate(check+"\ncheck()", &bad))...); err != nil {
		t.Fatal(err)
	}
	return bad, asked
}

// sheets prints a page and counts the sheets.
func sheets(t *testing.T, ctx context.Context, file string) int {
	t.Helper()
	abs, _ := filepath.Abs(file)
	tab, cancel := chromedp.NewContext(ctx)
	defer cancel()
	var pdf []byte
	if err := chromedp.Run(tab, chromedp.Navigate((&url.URL{Scheme: "file", Path: abs}).String()), chromedp.ActionFunc(func(ctx context.Context) (err error) {
		pdf, _, err = page.PrintToPDF().WithPreferCSSPageSize(true).WithPrintBackground(true).Do(ctx)
		return err
	})); err != nil {
		t.Fatal(err)
	}
	return bytes.Count(pdf, []byte("/Type /Page\n"))
}

// reach goes through a page with the Tab key and returns what was reached, and
// whether each had a mark that shows where one is.
func reach(t *testing.T, ctx context.Context, file string) (reached, wanted int, unmarked []string) {
	t.Helper()
	abs, _ := filepath.Abs(file)
	tab, cancel := chromedp.NewContext(ctx)
	defer cancel()
	const all = `document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex='0']")`
	if err := chromedp.Run(tab, chromedp.EmulateViewport(390, 844), chromedp.Navigate((&url.URL{Scheme: "file", Path: abs}).String()),
		chromedp.Evaluate(`[...`+all+`].filter((n) => n.getClientRects().length && !n.closest("details:not([open]) > :not(summary)")).length`, &wanted)); err != nil {
		t.Fatal(err)
	}
	for range wanted {
		var at struct {
			Words string
			Marks bool
		}
		if err := chromedp.Run(tab, chromedp.KeyEvent(kb.Tab), chromedp.Evaluate(`(() => {
			const n = document.activeElement, first = !n.dataset.seen;
			n.dataset.seen = "1";
			const s = getComputedStyle(n);
			return { Words: n === document.body || !first ? "" : n.tagName + " " + (n.textContent || n.id).trim().slice(0, 30), Marks: s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 1 };
		})()`, &at)); err != nil {
			t.Fatal(err)
		}
		if at.Words != "" {
			reached++
			if !at.Marks {
				unmarked = append(unmarked, at.Words)
			}
		}
	}
	return reached, wanted, unmarked
}

// TestPages makes every page of the examples and checks it on a phone and on a desk.
func TestPages(t *testing.T) {
	ctx := browser(t)
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	run(t, "./examples/chart", "-html", in("chart.html"))
	run(t, "./examples/chart", "-edition", "1987", "-class", "examples/chart/testdata/crowded.csv", "-html", in("crowded.html"))
	run(t, "./examples/practice", "-seed", "7", "-html", in("sheet.html"))
	run(t, "./examples/practice", "-seed", "7", "-classes", "3", "-html", in("sheets.html"))
	run(t, "./examples/practice", "-seed", "7", "-key", "-html", in("key.html"))
	run(t, "./examples/practice", "-seed", "7", "-key", "-full", "-html", in("full.html"))
	run(t, "./examples/season", "-stats", "-html", dir)
	run(t, "./examples/classday", "-html", in("day.html"))
	run(t, "./examples/classday", "-full", "-class", "examples/classday/testdata/named.csv", "-walk", "examples/classday/testdata/named-walk.csv", "-html", in("named.html"))
	for _, tt := range []struct {
		file   string
		sheets int // of paper; 0 for a page of any length
	}{
		{"chart.html", 1}, {"crowded.html", 0}, {"sheet.html", 1}, {"sheets.html", 3}, {"key.html", 1}, {"full.html", 0},
		{"coach.html", 1}, {"member-1.html", 1}, {"member-7.html", 1}, {"day.html", 5}, {"named.html", 0},
	} {
		t.Run(tt.file, func(t *testing.T) {
			for _, width := range []int64{390, 1280} {
				bad, asked := problems(t, ctx, address(t, in(tt.file)), width)
				for _, b := range bad {
					t.Errorf("%d pixels wide: %s", width, b)
				}
				for _, a := range asked {
					t.Errorf("asks for %s", a)
				}
			}
			if got := sheets(t, ctx, in(tt.file)); tt.sheets != 0 && got != tt.sheets {
				t.Errorf("prints on %d sheets, want %d", got, tt.sheets)
			}
			reached, wanted, unmarked := reach(t, ctx, in(tt.file))
			if reached != wanted || wanted == 0 {
				t.Errorf("the keyboard reaches %d of %d", reached, wanted)
			}
			for _, u := range unmarked {
				t.Errorf("no mark on what the keyboard is at: %s", u)
			}
		})
	}
}

// TestBrowser builds the page that grades one carcass and checks it with an answer
// and with problems beside the fields.
func TestBrowser(t *testing.T) {
	ctx := browser(t)
	dir := t.TempDir()
	cmd := exec.Command("sh", filepath.Join("..", "..", "browser", "build.sh"), dir)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	server := httptest.NewServer(http.FileServer(http.Dir(dir)))
	t.Cleanup(server.Close)
	here := server.URL + "/"
	ready := chromedp.Poll(`document.querySelector("#answer strong") !== null`, nil, chromedp.WithPollingTimeout(time.Minute))
	const spoil = `for (const [id, words] of [["carcass.measures.fat", "-1"], ["carcass.measures.kph", ""], ["carcass.marbling", "Smell 4"]]) {
		const field = document.getElementById(id);
		field.value = words;
		field.dispatchEvent(new Event("input", { bubbles: true }));
	}`
	for _, width := range []int64{390, 1280} {
		var answer string
		var hidden bool
		var top struct{ Answer, Form float64 }
		var told []string
		look := chromedp.Tasks{
			chromedp.Evaluate(`document.getElementById("answer").innerText`, &answer),
			chromedp.Evaluate(`({ Answer: document.getElementById("answer").getBoundingClientRect().top, Form: document.getElementById("form").getBoundingClientRect().top })`, &top),
		}
		bad, asked := problems(t, ctx, here, width, ready, look)
		if !strings.Contains(answer, "Low Choice, yield grade 3") || top.Answer >= top.Form {
			t.Errorf("%d pixels wide: answer %q at %v, form at %v", width, answer, top.Answer, top.Form)
		}
		spoiled := chromedp.Tasks{
			ready, chromedp.Evaluate(spoil, nil), chromedp.Evaluate(`document.getElementById("answer").innerText`, &answer), chromedp.Evaluate(`document.getElementById("invented").hidden`, &hidden),
			chromedp.Evaluate(`[...document.querySelectorAll("[aria-invalid=true]")].map((f) => f.id + ": " + document.getElementById(f.getAttribute("aria-describedby")).textContent)`, &told),
		}
		more, askedMore := problems(t, ctx, here, width, spoiled)
		for _, b := range append(bad, more...) {
			t.Errorf("%d pixels wide: %s", width, b)
		}
		for _, a := range append(asked, askedMore...) {
			if !strings.HasPrefix(a, here) {
				t.Errorf("asks for %s", a)
			}
		}
		if !strings.Contains(answer, "Not graded yet") || !hidden {
			t.Errorf("answer %q; no longer said to be invented: %v", answer, hidden)
		}
		if all := strings.Join(told, "\n"); len(told) != 3 || !strings.Contains(all, "marbling: ") || !strings.Contains(all, "fat: -1 in: out of range") || !strings.Contains(all, "kph: ") {
			t.Errorf("%d pixels wide: beside the fields: %q", width, told)
		}
	}
}

// TestCheck holds the check itself to a page on which everything is wrong.
func TestCheck(t *testing.T) {
	ctx := browser(t)
	file := filepath.Join(t.TempDir(), "bad.html")
	const text = `<!doctype html><html><head><title></title><link rel="stylesheet" href="http://127.0.0.1:9/x.css"></head><body>
<h1>One</h1><h1>Two</h1><h3>Three</h3><h2></h2>
<table><tr><th></th><td style="width:900px;display:inline-block">wide</td></tr></table>
<input id="own"><img src="data:,"><svg width="90" height="40" viewBox="0 0 90 40" aria-label="x"><rect width="90" height="40" fill="#888"/><text y="20" font-size="12" fill="#777">pale</text></svg>
<a href="#" style="outline:none"></a><p id="twice" style="color:#999">gray</p><p id="twice" style="font-size:9px">small</p>
</body></html>`
	if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	bad, asked := problems(t, ctx, address(t, file), 390)
	all := strings.Join(bad, "\n")
	for _, want := range []string{
		"no language", "no title", "no main part", "not one h1", "heading skips a level: Three", "empty heading", "table without caption: wide",
		"table head without scope", "empty table head", "field without label: own", "picture without words", "picture without its role",
		"link or button without words", "id twice: twice", "pixels wider than the screen", "words of 9.0 pixels: small", "contrast 2.8: gray", "contrast 1.3: pale",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("not found: %s", want)
		}
	}
	if t.Failed() {
		t.Log(all)
	}
	if len(asked) != 1 || asked[0] != "http://127.0.0.1:9/x.css" {
		t.Errorf("asked for %v", asked)
	}
	if _, _, unmarked := reach(t, ctx, file); len(unmarked) != 1 {
		t.Errorf("without a mark: %v, want the link", unmarked)
	}
}
