package main

import (
	"bytes"
	"context"
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

// TestLoad sends cards of many members at once, with readers and bad requests
// between, and holds what is kept to what was sent last.
func TestLoad(t *testing.T) {
	const clients, each = 16, 60
	s := open(t)
	official := mustOfficial("3-2-1-4 cuts 2-8-2")
	for c := range 4 {
		s.put(s.official, fmt.Sprintf("/classes/class-%d", c), `{"official":"`+official.String()+`"}`)
	}
	orders := orders4()
	last := make([]map[string]string, clients) // the last card of each class by client
	start := time.Now()
	var group sync.WaitGroup
	for client := range clients {
		last[client] = map[string]string{}
		group.Go(func() {
			r := rand.New(rand.NewPCG(1, uint64(client)))
			for i := range each {
				o := orders[r.IntN(len(orders))].String()
				card := fmt.Sprintf("class-%d/member-%d", r.IntN(4), client)
				path := s.url + "/classes/" + strings.Replace(card, "/", "/cards/", 1)
				status, _, got := call(t, s.clerk, "PUT", path, `{"placing":"`+o+`"}`)
				if status != 200 || got != `{"placing":"`+o+`"}` {
					t.Errorf("card: %d %s", status, got)
					return
				}
				last[client][card] = o
				switch i % 10 {
				case 3:
					if status, _, got := call(t, s.official, "GET", s.url+"/standings", ""); status != 200 {
						t.Errorf("standings: %d %s", status, got)
					}
				case 5:
					if status, _, got := call(t, s.clerk, "PUT", path, `{}`); status != 422 {
						t.Errorf("empty card: %d %s", status, got)
					}
				case 7:
					if status, _, got := call(t, s.clerk, "PUT", path, `{"placing":"1-1-1-1"}`); status != 422 {
						t.Errorf("bad card: %d %s", status, got)
					}
				}
			}
		})
	}
	group.Wait()
	t.Logf("%d requests in %v", clients*(each+each/10*3), time.Since(start).Round(time.Millisecond))
	kept, want := cards(t, s.store), 0
	for _, cards := range last {
		want += len(cards)
		for card, o := range cards {
			if kept[card] != o {
				t.Errorf("%s is %q, want %q", card, kept[card], o)
			}
		}
	}
	if len(kept) != want {
		t.Errorf("%d cards kept, want %d", len(kept), want)
	}
	sameStandings(t, s.store)
}

// quick serves a store with short limits, without tokens; closed has the addresses
// of the clients whose connections the service has closed.
func quick(t *testing.T) (store *Store, srv *httptest.Server, closed *sync.Map) {
	store = openFile(t, filepath.Join(t.TempDir(), "contest.db"))
	srv, closed = httptest.NewUnstartedServer(nil), &sync.Map{}
	srv.Config = newServer(&service{store: store, local: true, log: slog.New(slog.DiscardHandler)})
	srv.Config.ReadTimeout, srv.Config.ReadHeaderTimeout, srv.Config.WriteTimeout = 300*time.Millisecond, 300*time.Millisecond, 600*time.Millisecond
	srv.Config.ConnState = func(c net.Conn, state http.ConnState) {
		if state == http.StateClosed {
			closed.Store(c.RemoteAddr().String(), true)
		}
	}
	srv.Start()
	t.Cleanup(srv.Close)
	(&site{t: t, url: srv.URL}).put("", "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`)
	return store, srv, closed
}

func dial(t *testing.T, srv *httptest.Server) net.Conn {
	t.Helper()
	conn, err := net.Dial("tcp", srv.Listener.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { conn.Close() })
	conn.SetDeadline(time.Now().Add(5 * time.Second))
	return conn
}

const head = "PUT /classes/steers/cards/slow HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Length: 23\r\n\r\n"

// TestWhole shows that the head of the slow clients below is a good one: with its
// whole body it writes a card.
func TestWhole(t *testing.T) {
	store, srv, _ := quick(t)
	conn := dial(t, srv)
	fmt.Fprint(conn, head+`{"placing":"3-2-1-4"}  `)
	if answer, err := io.ReadAll(conn); err != nil || !bytes.HasPrefix(answer, []byte("HTTP/1.1 200")) {
		t.Errorf("%q, %v", answer, err)
	}
	if got := cards(t, store)["steers/slow"]; got != "3-2-1-4" {
		t.Errorf("kept: %q", got)
	}
}

// TestSlow holds out against clients that hang up, stop or dawdle: each is cut off,
// none writes anything, and the others are served in the meantime.
func TestSlow(t *testing.T) {
	store, srv, closed := quick(t)
	for range 20 { // hang up in the middle of the body
		conn := dial(t, srv)
		fmt.Fprint(conn, head+`{"placing":"3-2`)
		conn.Close()
	}
	var group sync.WaitGroup
	for name, send := range map[string]func(net.Conn) error{
		"nothing at all":          func(net.Conn) error { return nil },
		"half a head":             func(c net.Conn) error { _, err := fmt.Fprint(c, head[:40]); return err },
		"half a body":             func(c net.Conn) error { _, err := fmt.Fprint(c, head+`{"placing":"3-2`); return err },
		"a head byte by byte":     func(c net.Conn) error { return drip(c, strings.Repeat("GET / ", 40)) },
		"a body byte by byte":     func(c net.Conn) error { fmt.Fprint(c, head); return drip(c, `{"placing":"3-2-1-4"}  `) },
		"a chunk and no more":     func(c net.Conn) error { _, err := fmt.Fprint(c, chunked+"5\r\n{\"pla\r\n"); return err },
		"a chunk that is half":    func(c net.Conn) error { _, err := fmt.Fprint(c, chunked+"15\r\n{\"pla"); return err },
		"a chunk of a bad length": func(c net.Conn) error { _, err := fmt.Fprint(c, chunked+"zz\r\n{\"pla"); return err },
	} {
		for range 10 {
			conn := dial(t, srv)
			group.Go(func() {
				_ = send(conn) // an error where it is cut off already
				answer, err := io.ReadAll(conn)
				if isTimeout(err) {
					t.Errorf("%s keeps its connection", name)
				}
				if bytes.HasPrefix(answer, []byte("HTTP/1.1 2")) {
					t.Errorf("%s: %q", name, answer)
				}
			})
		}
	}
	begun := time.Now()
	for range 20 {
		if status, _, got := call(t, "", "GET", srv.URL+"/health", ""); status != 200 {
			t.Errorf("health among slow clients: %d %s", status, got)
		}
	}
	t.Logf("20 healthy answers among slow clients in %v", time.Since(begun).Round(time.Millisecond))
	group.Wait()
	if kept := cards(t, store); len(kept) != 0 {
		t.Errorf("slow clients wrote %v", kept)
	}

	// A client that asks for much and does not read is cut off too.
	fill(t, store, 1000, 1)
	conn := dial(t, srv)
	if err := conn.(*net.TCPConn).SetReadBuffer(4096); err != nil {
		t.Fatal(err)
	}
	for range 1000 {
		if _, err := fmt.Fprint(conn, "GET /standings HTTP/1.1\r\nHost: localhost\r\n\r\n"); err != nil {
			break
		}
	}
	for begun := time.Now(); ; time.Sleep(20 * time.Millisecond) {
		if _, ok := closed.Load(conn.LocalAddr().String()); ok {
			break
		}
		if time.Since(begun) > 30*time.Second {
			t.Fatal("a client that does not read keeps its connection")
		}
	}
}

const chunked = "PUT /classes/steers/cards/slow HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\n\r\n"

// drip sends a byte at a time.
func drip(c net.Conn, s string) error {
	for i := range len(s) {
		if _, err := c.Write([]byte(s[i : i+1])); err != nil {
			return err
		}
		time.Sleep(25 * time.Millisecond)
	}
	return nil
}

// TestOversize sends heads, addresses and bodies without end.
func TestOversize(t *testing.T) {
	store, srv, _ := quick(t)
	for _, tt := range []struct {
		name, first, again, want string
	}{
		{"headers", "GET /standings HTTP/1.1\r\nHost: localhost\r\n", "X-Filler: " + strings.Repeat("x", 52) + "\r\n", "HTTP/1.1 431"},
		{"one header", "GET /standings HTTP/1.1\r\nHost: localhost\r\nX-Filler: ", "xxxxxxxx", "HTTP/1.1 431"},
		{"an address", "GET /standings?division=", "xxxxxxxx", "HTTP/1.1 431"},
		{"a token", "GET /standings HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer ", "xxxxxxxx", "HTTP/1.1 431"},
		{"a body of a false length", "PUT /classes/steers/cards/slow HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999999\r\n\r\n", "xxxxxxxx", "HTTP/1.1 413"},
		{"chunks", chunked, "8\r\n        \r\n", "HTTP/1.1 413"},
		{"text in quotes", chunked + "c\r\n{\"placing\":\"\r\n", "8\r\n1-2-3-4-\r\n", "HTTP/1.1 413"},
	} {
		conn := dial(t, srv)
		fmt.Fprint(conn, tt.first)
		for sent := 0; sent < 1<<20; sent += len(tt.again) * 64 {
			if _, err := fmt.Fprint(conn, strings.Repeat(tt.again, 64)); err != nil {
				break // cut off
			}
		}
		answer, err := io.ReadAll(conn)
		// What was sent after the answer may have reset the connection before it was read.
		if isTimeout(err) || len(answer) > 0 && !bytes.HasPrefix(answer, []byte(tt.want)) {
			t.Errorf("%s without end: %.80q, %v", tt.name, answer, err)
		}
		t.Logf("%s: %.20q, %v", tt.name, answer, err)
	}
	if kept := cards(t, store); len(kept) != 0 {
		t.Errorf("oversize clients wrote %v", kept)
	}
}

func isTimeout(err error) bool {
	var ne net.Error
	return errors.As(err, &ne) && ne.Timeout()
}

// TestGivenUp is a client that goes away while its card is entered.
func TestGivenUp(t *testing.T) {
	store, _, _ := quick(t)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if err := store.SetCard(ctx, "test", "steers", "gone", placing.Card{Order: placing.MustParseOrder("1-2-3-4")}); !errors.Is(err, context.Canceled) {
		t.Errorf("a request that was given up: %v", err)
	}
	if len(cards(t, store)) != 0 {
		t.Error("it was kept")
	}
	if p := problemOf(context.Canceled); p.Status != http.StatusServiceUnavailable {
		t.Errorf("given up is answered with %d", p.Status)
	}
	if err := store.SetCard(context.Background(), "test", "steers", "zero", placing.Card{}); !errors.Is(err, placing.ErrMissing) {
		t.Errorf("the zero card: %v", err)
	}
}

// TestStoreGone closes the store under load. Every card that was acknowledged is
// there afterwards, and no answer tells what went wrong inside.
func TestStoreGone(t *testing.T) {
	s := open(t)
	s.put(s.official, "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`)
	var kept sync.Map
	var group sync.WaitGroup
	failed := make(chan int, 1000)
	for client := range 8 {
		group.Go(func() {
			for i := range 60 {
				member := fmt.Sprintf("m-%d-%d", client, i)
				status, _, got := call(t, s.clerk, "PUT", s.url+"/classes/steers/cards/"+member, `{"placing":"1-2-3-4"}`)
				switch {
				case status == 200:
					kept.Store(member, true)
				case status >= 500 && !strings.Contains(got, "sql"):
					failed <- status
				default:
					t.Errorf("%d %s", status, got)
				}
				if client == 0 && i == 30 {
					s.store.Close()
				}
			}
		})
	}
	group.Wait()
	if len(failed) == 0 {
		t.Error("no request failed after the store was closed")
	}
	if status, kind, got := call(t, "", "GET", s.url+"/health", ""); status != 500 || strings.Contains(got, "sql") {
		t.Errorf("health of a closed store: %d %s %s", status, kind, got)
	}
	again := openFile(t, s.path)
	found := cards(t, again)
	n := 0
	kept.Range(func(member, _ any) bool {
		n++
		if found["steers/"+member.(string)] == "" {
			t.Errorf("the card of %v was acknowledged and is lost", member)
		}
		return true
	})
	sameStandings(t, again)
	t.Logf("%d acknowledged, %d failed, %d kept", n, len(failed), len(found))
}

// TestFull lets the disk run full. The card that does not fit is not acknowledged
// and changes nothing; where there is room again, the service goes on.
func TestFull(t *testing.T) {
	s := open(t)
	s.put(s.official, "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`)
	var pages int
	if err := s.store.write.QueryRow(`PRAGMA page_count`).Scan(&pages); err != nil {
		t.Fatal(err)
	}
	limit := func(n int) {
		if _, err := s.store.write.Exec(fmt.Sprintf(`PRAGMA max_page_count = %d`, n)); err != nil {
			t.Fatal(err)
		}
	}
	limit(pages + 2)
	n := 0
	for ; ; n++ {
		status, _, got := call(t, s.clerk, "PUT", fmt.Sprintf("%s/classes/steers/cards/m-%d", s.url, n), `{"placing":"1-2-3-4"}`)
		if status == 500 && !strings.Contains(got, "full") {
			break
		}
		if status != 200 || n == 10_000 {
			t.Fatalf("card %d: %d %s", n, status, got)
		}
	}
	if kept := cards(t, s.store); len(kept) != n {
		t.Errorf("%d cards kept, %d acknowledged", len(kept), n)
	}
	sameStandings(t, s.store)
	limit(pages + 100)
	s.put(s.clerk, fmt.Sprintf("/classes/steers/cards/m-%d", n), `{"placing":"1-2-3-4"}`)
	sameStandings(t, s.store)
	t.Logf("%d cards before it was full", n)
}
