package main

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/placing"
)

// site is a service on loopback with a token for each role.
type site struct {
	t               testing.TB
	store           *Store
	path, url       string
	clerk, official string // tokens; the public has none
}

// open serves a new store.
func open(t testing.TB) *site {
	t.Helper()
	s := &site{t: t, path: filepath.Join(t.TempDir(), "contest.db")}
	s.store = openFile(t, s.path)
	s.clerk, s.official = newToken(t, s.store, "clerk", "clio"), newToken(t, s.store, "official", "olaf")
	s.url = serveStore(t, &service{store: s.store}).URL
	return s
}

func openFile(t testing.TB, path string) *Store {
	t.Helper()
	store, err := Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	return store
}

func newToken(t testing.TB, s *Store, role, name string) string {
	t.Helper()
	token, err := s.NewToken(context.Background(), "test", role, name)
	if err != nil {
		t.Fatal(err)
	}
	return token
}

func serveStore(t testing.TB, s *service) *httptest.Server {
	s.log = slog.New(slog.DiscardHandler)
	srv := httptest.NewUnstartedServer(nil)
	srv.Config = newServer(s)
	srv.Start()
	t.Cleanup(srv.Close)
	return srv
}

// call sends a request with a token and returns the status, the media type and
// the body.
func call(t testing.TB, token, method, url, body string) (int, string, string) {
	t.Helper()
	status, kind, got, err := try(token, method, url, body)
	if err != nil {
		t.Fatal(err)
	}
	return status, kind, got
}

// try is call for a service that may be gone.
func try(token, method, url, body string) (int, string, string, error) {
	req, err := http.NewRequest(method, url, strings.NewReader(body))
	if err != nil {
		return 0, "", "", err
	}
	if token != "" {
		req.Header.Set("Authorization", "Bearer "+token)
	}
	resp, err := http.DefaultClient.Do(req)
	if err != nil {
		return 0, "", "", err
	}
	defer resp.Body.Close()
	b, err := io.ReadAll(resp.Body)
	return resp.StatusCode, resp.Header.Get("Content-Type"), string(bytes.TrimSpace(b)), err
}

// get reads with a token.
func (s *site) get(token, path string) string {
	s.t.Helper()
	status, _, got := call(s.t, token, "GET", s.url+path, "")
	if status != 200 {
		s.t.Fatalf("GET %s: %d %s", path, status, got)
	}
	return got
}

// put changes something with a token.
func (s *site) put(token, path, body string) string {
	s.t.Helper()
	status, _, got := call(s.t, token, "PUT", s.url+path, body)
	if status != 200 {
		s.t.Fatalf("PUT %s %s: %d %s", path, body, status, got)
	}
	return got
}

// problems reads an answer that must be a problem.
func problems(t testing.TB, status int, kind, body string) problem {
	t.Helper()
	var p problem
	if err := json.Unmarshal([]byte(body), &p); err != nil {
		t.Fatalf("%s: %v", body, err)
	}
	if kind != "application/problem+json" || p.Status != status || p.Title == "" || p.Detail == "" {
		t.Errorf("%d %s %s", status, kind, body)
	}
	return p
}

// cards returns every card that is kept, with its score, by class/member.
func cards(t testing.TB, s *Store) map[string]string {
	t.Helper()
	type row struct {
		cardRow
		class, member string
	}
	rows, err := list(context.Background(), s.read, func(r *row) []any {
		return append(scanCard(&r.cardRow), &r.class, &r.member)
	}, `SELECT placing, mark, class, member FROM card`)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, r := range rows {
		all[r.class+"/"+r.member] = cardText(r.Card())
	}
	return all
}

func orders4() (all []placing.Order) {
	for o := range placing.Orders(4) {
		all = append(all, o)
	}
	return all
}
