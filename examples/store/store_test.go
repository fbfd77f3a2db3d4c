package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"math/rand/v2"
	"net"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/ribface/placing"
)

// open serves a new store on loopback.
func open(t *testing.T) (*Store, *httptest.Server) {
	t.Helper()
	store, err := Open(context.Background(), filepath.Join(t.TempDir(), "contest.db"))
	if err != nil {
		t.Fatal(err)
	}
	srv := httptest.NewUnstartedServer(nil)
	srv.Config = newServer(&service{store: store, log: slog.New(slog.DiscardHandler)})
	srv.Start()
	t.Cleanup(func() { srv.Close(); store.Close() })
	return store, srv
}

// call sends a request and returns the status, the media type and the body.
func call(t testing.TB, method, url, body string) (int, string, string) {
	t.Helper()
	req, err := http.NewRequest(method, url, strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	resp, err := http.DefaultClient.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	defer resp.Body.Close()
	b, err := io.ReadAll(resp.Body)
	if err != nil {
		t.Fatal(err)
	}
	return resp.StatusCode, resp.Header.Get("Content-Type"), string(bytes.TrimSpace(b))
}

func TestContest(t *testing.T) {
	_, srv := open(t)
	if _, _, got := call(t, "GET", srv.URL+"/standings", ""); got != `{"classes":[],"of":"0","members":[],"teams":[]}` {
		t.Fatalf("standings of nothing: %s", got)
	}
	for _, step := range []struct {
		name, method, path, body string
		status                   int
		want                     string
	}{
		{"a class", "PUT", "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`, 200, `{"official":"3-2-1-4 cuts 2-8-2"}`},
		{"is there", "GET", "/classes/steers", "", 200, `{"official":"3-2-1-4 cuts 2-8-2"}`},
		{"a second class", "PUT", "/classes/heifers", `{"official":"1-2-3 cuts 5-5"}`, 200, `{"official":"1-2-3 cuts 5-5"}`},
		{"a card", "PUT", "/classes/steers/cards/ada-01", `{"placing":"1-3-2-4"}`, 200, `{"score":32}`},
		{"what it lost", "GET", "/classes/steers/cards/ada-01", "", 200, `{"placing":"1-3-2-4","score":32,"faults":[{"upper":3,"lower":1,"points":10},{"upper":2,"lower":1,"points":8}]}`},
		{"a full score has no faults", "PUT", "/classes/steers/cards/bo-02", `{"placing":"3-2-1-4"}`, 200, `{"score":50}`},
		{"and says so", "GET", "/classes/steers/cards/bo-02", "", 200, `{"placing":"3-2-1-4","score":50,"faults":[]}`},
		{"a mark in place of a placing", "PUT", "/classes/steers/cards/cy-03", `{"mark":"double-marked"}`, 200, `{"score":6}`},
		{"a blank card", "PUT", "/classes/heifers/cards/ada-01", `{}`, 200, `{"score":0}`},
		{"is kept as blank", "GET", "/classes/heifers/cards/ada-01", "", 200, `{"mark":"blank","score":0,"faults":[]}`},
		{"corrected", "PUT", "/classes/heifers/cards/ada-01", `{"placing":"1-3-2"}`, 200, `{"score":45}`},
		{"equal points share a rank", "PUT", "/classes/heifers/cards/cy-03", `{"placing":"2-1-3"}`, 200, `{"score":45}`},
		{"a member of a team", "PUT", "/members/ada-01", `{"team":"north","division":"junior"}`, 200, `{"team":"north","division":"junior"}`},
		{"another", "PUT", "/members/bo-02", `{"team":"north","division":"senior"}`, 200, `{"team":"north","division":"senior"}`},
		{"one who hands in nothing", "PUT", "/members/dee-04", `{"team":"south","division":"junior"}`, 200, `{"team":"south","division":"junior"}`},
		{"standings", "GET", "/standings", "", 200, `{"classes":["heifers","steers"],"of":"100","members":[` +
			`{"rank":1,"member":"ada-01","team":"north","division":"junior","points":"77"},` +
			`{"rank":2,"member":"cy-03","points":"51"},` +
			`{"rank":3,"member":"bo-02","team":"north","division":"senior","points":"50","missing":["placing: class \"heifers\""]},` +
			`{"rank":4,"member":"dee-04","team":"south","division":"junior","points":"0","missing":["placing: class \"heifers\"","placing: class \"steers\""]}],` +
			`"teams":[{"rank":1,"team":"north","points":"127"},{"rank":2,"team":"south","points":"0"}]}`},
		{"the official placing changes", "PUT", "/classes/heifers", `{"official":"1-3-2 cuts 5-6"}`, 200, `{"official":"1-3-2 cuts 5-6"}`},
		{"and the standings with it", "GET", "/standings?division=senior", "", 200, `{"classes":["heifers","steers"],"of":"100","members":[` +
			`{"rank":1,"member":"bo-02","team":"north","division":"senior","points":"50","missing":["placing: class \"heifers\""]}],"teams":[{"rank":1,"team":"north","points":"50"}]}`},
	} {
		status, kind, got := call(t, step.method, srv.URL+step.path, step.body)
		if status != step.status || got != step.want || kind != "application/json" {
			t.Fatalf("%s: %d %s %s\nwant %d %s", step.name, status, kind, got, step.status, step.want)
		}
	}
}

func TestBadRequests(t *testing.T) {
	_, srv := open(t)
	if status, _, got := call(t, "PUT", srv.URL+"/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`); status != 200 {
		t.Fatal(got)
	}
	if status, _, got := call(t, "PUT", srv.URL+"/classes/steers/cards/ada", `{"placing":"3-2-1-4"}`); status != 200 {
		t.Fatal(got)
	}
	if status, _, got := call(t, "PUT", srv.URL+"/members/ada", `{"division":"junior"}`); status != 200 {
		t.Fatal(got)
	}
	for _, tt := range []struct {
		name, method, path, body string
		status                   int
		field, value             string
	}{
		{"an exhibit placed twice", "PUT", "/classes/steers/cards/bo", `{"placing":"3-2-3-4"}`, 422, "order", "3-2-3-4"},
		{"a card of another size", "PUT", "/classes/steers/cards/bo", `{"placing":"1-2-3"}`, 422, "card", "1-2-3"},
		{"a placing and a mark", "PUT", "/classes/steers/cards/bo", `{"placing":"1-2-3-4","mark":"blank"}`, 422, "card", "1-2-3-4 and blank"},
		{"a mark that is none", "PUT", "/classes/steers/cards/bo", `{"mark":"smudged"}`, 422, "mark", "smudged"},
		{"too few cuts", "PUT", "/classes/heifers", `{"official":"1-2-3 cuts 5"}`, 422, "cuts", "5"},
		{"no official placing", "PUT", "/classes/heifers", `{}`, 422, "official", ""},
		{"an official placing of another size than the cards", "PUT", "/classes/steers", `{"official":"1-2 cuts 5"}`, 422, "official", "1-2 cuts 5"},
		{"a class that is not there", "PUT", "/classes/nowhere/cards/bo", `{"placing":"1-2-3-4"}`, 404, "", ""},
		{"a card that is not there", "GET", "/classes/steers/cards/bo", "", 404, "", ""},
		{"a class name with a space", "PUT", "/classes/a%20b", `{"official":"1-2 cuts 5"}`, 422, "class", `"a b"`},
		{"a member name too long", "PUT", "/classes/steers/cards/" + strings.Repeat("m", 41), `{}`, 422, "member", `"` + strings.Repeat("m", 41) + `"`},
		{"a team name with a tab", "PUT", "/members/bo", `{"team":"a\tb"}`, 422, "team", `"a\tb"`},
		{"a division that nobody is in", "GET", "/standings?division=nobody", "", 422, "division", `"nobody"`},
		{"half a body", "PUT", "/classes/steers/cards/bo", `{"placing":`, 400, "", ""},
		{"no body", "PUT", "/classes/steers/cards/bo", ``, 400, "", ""},
		{"a field that is not known", "PUT", "/classes/steers/cards/bo", `{"plasing":"1-2-3-4"}`, 400, "", ""},
		{"two values", "PUT", "/classes/steers/cards/bo", `{}{}`, 400, "", ""},
		{"a number for a placing", "PUT", "/classes/steers/cards/bo", `{"placing":3214}`, 400, "", ""},
		{"a body too long", "PUT", "/classes/steers/cards/bo", `{"mark":"` + strings.Repeat("x", maxBody) + `"}`, 413, "", ""},
		{"spaces without end", "PUT", "/classes/steers/cards/bo", `{}` + strings.Repeat(" ", maxBody), 413, "", ""},
	} {
		status, kind, got := call(t, tt.method, srv.URL+tt.path, tt.body)
		var p problem
		if err := json.Unmarshal([]byte(got), &p); err != nil {
			t.Errorf("%s: %s: %v", tt.name, got, err)
			continue
		}
		if status != tt.status || p.Status != tt.status || kind != "application/problem+json" || p.Field != tt.field || p.Value != tt.value || p.Title == "" || p.Detail == "" {
			t.Errorf("%s: %d %s %+v", tt.name, status, kind, p)
		}
		if p.Field != "" && p.Allowed == "" {
			t.Errorf("%s: does not say what is allowed", tt.name)
		}
	}
	if status, _, _ := call(t, "DELETE", srv.URL+"/classes/steers", ""); status != http.StatusMethodNotAllowed {
		t.Errorf("DELETE gives %d", status)
	}
	if status, _, _ := call(t, "GET", srv.URL+"/elsewhere", ""); status != http.StatusNotFound {
		t.Errorf("an unknown path gives %d", status)
	}
	req, _ := http.NewRequest("PUT", srv.URL+"/classes/x", strings.NewReader("official=1"))
	req.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	resp, err := http.DefaultClient.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	if resp.StatusCode != http.StatusUnsupportedMediaType {
		t.Errorf("a form gives %d", resp.StatusCode)
	}
	// Nothing of all this was kept.
	if _, _, got := call(t, "GET", srv.URL+"/standings", ""); got != `{"classes":["steers"],"of":"50","members":[{"rank":1,"member":"ada","division":"junior","points":"50"}],"teams":[]}` {
		t.Errorf("standings after bad requests: %s", got)
	}
}

// TestLoad sends cards of many members at once, with readers and bad requests
// between, and holds the standings to what the cards add up to.
func TestLoad(t *testing.T) {
	const clients, cards = 16, 120
	store, srv := open(t)
	official := mustOfficial("3-2-1-4 cuts 2-8-2")
	for c := range 4 {
		if status, _, got := call(t, "PUT", fmt.Sprintf("%s/classes/class-%d", srv.URL, c), `{"official":"`+official.String()+`"}`); status != 200 {
			t.Fatal(got)
		}
	}
	var all []placing.Order
	for o := range placing.Orders(4) {
		all = append(all, o)
	}
	last := make([]map[string]placing.Order, clients) // the last card of each class by client
	start := time.Now()
	var group sync.WaitGroup
	for client := range clients {
		last[client] = map[string]placing.Order{}
		group.Go(func() {
			r := rand.New(rand.NewPCG(1, uint64(client)))
			for i := range cards {
				class := fmt.Sprintf("class-%d", r.IntN(4))
				o := all[r.IntN(len(all))]
				want, _ := official.Score(o)
				status, _, got := call(t, "PUT", fmt.Sprintf("%s/classes/%s/cards/member-%d", srv.URL, class, client), `{"placing":"`+o.String()+`"}`)
				if status != 200 || got != fmt.Sprintf(`{"score":%d}`, want) {
					t.Errorf("card: %d %s, want %d", status, got, want)
					return
				}
				last[client][class] = o
				switch i % 10 {
				case 3:
					if status, _, got := call(t, "GET", srv.URL+"/standings", ""); status != 200 {
						t.Errorf("standings: %d %s", status, got)
					}
				case 7:
					if status, _, got := call(t, "PUT", srv.URL+"/classes/"+class+"/cards/bad", `{"placing":"1-1-1-1"}`); status != 422 {
						t.Errorf("bad card: %d %s", status, got)
					}
				}
			}
		})
	}
	group.Wait()
	t.Logf("%d requests in %v", clients*(cards+cards/10*2), time.Since(start).Round(time.Millisecond))
	contest, err := store.Everything(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	entries := contest.Cards
	want := 0
	for _, cards := range last {
		want += len(cards)
	}
	if len(entries) != want {
		t.Errorf("%d cards kept, want %d", len(entries), want)
	}
	for _, e := range entries {
		var client int
		if _, err := fmt.Sscanf(e.Member.ID, "member-%d", &client); err != nil || last[client][e.Class] != e.Card.Order {
			t.Errorf("%s of %s is %v", e.Class, e.Member.ID, e.Card.Order)
		}
	}
}

// TestFaults does what clients and machines do to a service: hang up in the
// middle, send slowly, ask for a store that is closed. Every card that was
// acknowledged is there afterwards.
func TestFaults(t *testing.T) {
	path := filepath.Join(t.TempDir(), "contest.db")
	store, err := Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	server := newServer(&service{store: store, log: slog.New(slog.DiscardHandler)})
	server.ReadTimeout, server.ReadHeaderTimeout = 300*time.Millisecond, 300*time.Millisecond
	srv := httptest.NewUnstartedServer(nil)
	srv.Config = server
	srv.Start()
	defer srv.Close()
	if status, _, got := call(t, "PUT", srv.URL+"/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`); status != 200 {
		t.Fatal(got)
	}

	dial := func() net.Conn {
		conn, err := net.Dial("tcp", srv.Listener.Addr().String())
		if err != nil {
			t.Fatal(err)
		}
		return conn
	}
	const head = "PUT /classes/steers/cards/slow HTTP/1.1\r\nHost: x\r\nContent-Length: 25\r\n\r\n"
	for range 20 { // clients that hang up in the middle of the body
		conn := dial()
		fmt.Fprint(conn, head+`{"placing":"3-2`)
		conn.Close()
	}
	conn := dial() // a client that stops sending is cut off
	fmt.Fprint(conn, head+`{"placing":"3-2`)
	conn.SetReadDeadline(time.Now().Add(5 * time.Second))
	if _, err := io.ReadAll(conn); errors.Is(err, context.DeadlineExceeded) || isTimeout(err) {
		t.Error("a client that stops sending keeps its connection")
	}
	conn.Close()
	conn = dial() // headers without end
	fmt.Fprint(conn, "GET /standings HTTP/1.1\r\n")
	for range 4 * maxHeader / 64 {
		if _, err := fmt.Fprintf(conn, "X-Filler: %s\r\n", strings.Repeat("x", 52)); err != nil {
			break
		}
	}
	fmt.Fprint(conn, "\r\n")
	conn.SetReadDeadline(time.Now().Add(5 * time.Second))
	answer, err := io.ReadAll(conn)
	if isTimeout(err) || len(answer) > 0 && !bytes.HasPrefix(answer, []byte("HTTP/1.1 431")) {
		t.Errorf("headers without end: %.60q, %v", answer, err)
	}
	conn.Close()
	ctx, cancel := context.WithCancel(context.Background()) // a client that gives up
	cancel()
	if _, err := store.SetCard(ctx, placing.CardRules{}, "steers", "gone", placing.Card{Order: placing.MustParseOrder("1-2-3-4")}); !errors.Is(err, context.Canceled) {
		t.Errorf("a request that was given up: %v", err)
	}
	if p := problemOf(context.Canceled); p.Status != http.StatusServiceUnavailable {
		t.Errorf("given up is answered with %d", p.Status)
	}

	// The store goes away under load.
	var kept sync.Map
	var group sync.WaitGroup
	failed := make(chan int, 1000)
	for client := range 8 {
		group.Go(func() {
			for i := range 60 {
				member := fmt.Sprintf("m-%d-%d", client, i)
				status, _, got := call(t, "PUT", srv.URL+"/classes/steers/cards/"+member, `{"placing":"1-2-3-4"}`)
				switch {
				case status == 200:
					kept.Store(member, true)
				case status >= 500 && !strings.Contains(got, "sql"):
					failed <- status
				default:
					t.Errorf("%d %s", status, got)
				}
				if client == 0 && i == 30 {
					store.Close()
				}
			}
		})
	}
	group.Wait()
	if len(failed) == 0 {
		t.Error("no request failed after the store was closed")
	}
	again, err := Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	contest, err := again.Everything(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	entries := contest.Cards
	found := map[string]bool{}
	for _, e := range entries {
		found[e.Member.ID] = true
		if e.Member.ID == "slow" || e.Member.ID == "gone" {
			t.Errorf("%s was kept", e.Member.ID)
		}
	}
	n := 0
	kept.Range(func(member, _ any) bool {
		n++
		if !found[member.(string)] {
			t.Errorf("the card of %v was acknowledged and is lost", member)
		}
		return true
	})
	t.Logf("%d acknowledged, %d failed, %d kept", n, len(failed), len(entries))
}

func isTimeout(err error) bool {
	var ne net.Error
	return errors.As(err, &ne) && ne.Timeout()
}

// TestShutdown lets a request that is under way finish and takes no more.
func TestShutdown(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	began, release := make(chan bool), make(chan bool)
	server := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		close(began)
		<-release
		fmt.Fprint(w, "done")
	})}
	ctx, stop := context.WithCancel(context.Background())
	served := make(chan error, 1)
	go func() { served <- serve(ctx, server, listener) }()
	got := make(chan string, 1)
	go func() {
		_, _, body := call(t, "GET", "http://"+listener.Addr().String(), "")
		got <- body
	}()
	<-began
	stop()
	time.Sleep(20 * time.Millisecond) // the listener closes while the request waits
	if conn, err := net.Dial("tcp", listener.Addr().String()); err == nil {
		conn.Close()
		t.Error("still listening after the stop")
	}
	close(release)
	if body := <-got; body != "done" {
		t.Errorf("the request under way got %q", body)
	}
	if err := <-served; err != nil {
		t.Errorf("serve: %v", err)
	}
}

func TestRun(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	dir := t.TempDir()
	if err := run(ctx, "127.0.0.1:0", filepath.Join(dir, "a b%c?.db"), slog.New(slog.DiscardHandler)); err == nil {
		t.Error("a store opened after the stop")
	}
	if err := run(context.Background(), "256.0.0.1:1", filepath.Join(dir, "b.db"), slog.New(slog.DiscardHandler)); err == nil {
		t.Error("listening on an impossible address")
	}
	if _, err := Open(context.Background(), filepath.Join(dir, "no", "such", "folder.db")); err == nil {
		t.Error("opened a file in a folder that is not there")
	}
}
