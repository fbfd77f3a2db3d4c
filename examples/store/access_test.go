package main

import (
	"context"
	"encoding/hex"
	"io"
	"net/http"
	"os"
	"strings"
	"testing"
)

// TestRoles sends every request as everyone.
func TestRoles(t *testing.T) {
	s := open(t)
	s.put(s.official, "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`)
	s.put(s.clerk, "/classes/steers/cards/ada", `{"placing":"3-2-1-4"}`)
	for _, tt := range []struct {
		method, path, body      string
		public, clerk, official int
	}{
		{"GET", "/health", "", 200, 200, 200},
		{"GET", "/standings", "", 200, 200, 200},
		{"GET", "/classes/steers", "", 401, 403, 200},
		{"PUT", "/classes/heifers", `{"official":"1-2 cuts 5"}`, 401, 403, 200},
		{"PUT", "/classes/heifers/state", `{"state":"closed"}`, 401, 403, 200},
		{"GET", "/classes/steers/cards/ada", "", 401, 200, 200},
		{"PUT", "/classes/steers/cards/bo", `{"placing":"1-2-3-4"}`, 401, 200, 403},
		{"PUT", "/members/bo", `{"team":"","division":""}`, 401, 200, 200},
		{"GET", "/log", "", 401, 403, 200},
	} {
		for _, who := range []struct {
			name, token string
			want        int
		}{{"public", "", tt.public}, {"clerk", s.clerk, tt.clerk}, {"official", s.official, tt.official}, {"a wrong token", s.clerk + "x", 401}} {
			status, kind, got := call(t, who.token, tt.method, s.url+tt.path, tt.body)
			if status != who.want {
				t.Errorf("%s %s as %s: %d, want %d", tt.method, tt.path, who.name, status, who.want)
			}
			if status == 200 {
				continue
			}
			if p := problems(t, status, kind, got); len(p.Problems) != 1 || p.Problems[0].Path != "Authorization" || p.Problems[0].Allowed == "" {
				t.Errorf("%s %s as %s: %s", tt.method, tt.path, who.name, got)
			}
			if who.token != "" && strings.Contains(got, who.token) {
				t.Errorf("the token is told back: %s", got)
			}
		}
	}
	// A token that is given another way is none.
	for _, given := range []string{s.official, "Basic " + s.official, "bearer", "Bearer", "Bearer ", "Bearer " + strings.ToLower(s.official), "Bearer  " + s.official} {
		req, _ := http.NewRequest("GET", s.url+"/log", nil)
		req.Header.Set("Authorization", given)
		resp, err := http.DefaultClient.Do(req)
		if err != nil {
			t.Fatal(err)
		}
		resp.Body.Close()
		if resp.StatusCode != http.StatusUnauthorized || resp.Header.Get("WWW-Authenticate") != "Bearer" {
			t.Errorf("%.9q: %d", given, resp.StatusCode)
		}
	}
}

// TestTokens makes and takes away tokens while the service runs.
func TestTokens(t *testing.T) {
	ctx := context.Background()
	s := open(t)
	second := newToken(t, s.store, "official", "second")
	s.get(second, "/log")
	if err := s.store.Revoke(ctx, "test", "second"); err != nil {
		t.Fatal(err)
	}
	if status, _, _ := call(t, second, "GET", s.url+"/log", ""); status != 401 {
		t.Errorf("a token that was revoked: %d", status)
	}
	for _, tt := range []struct {
		name string
		err  error
	}{
		{"revoked twice", s.store.Revoke(ctx, "test", "second")},
		{"a name that has one", errOf(s.store.NewToken(ctx, "test", "clerk", "clio"))},
		{"a role that is none", errOf(s.store.NewToken(ctx, "test", "public", "zoe"))},
		{"two roles", errOf(s.store.NewToken(ctx, "test", "clerk or official", "zoe"))},
		{"a name that is none", errOf(s.store.NewToken(ctx, "test", "clerk", "a b"))},
	} {
		if tt.err == nil || len(problemOf(tt.err).Problems) != 1 {
			t.Errorf("%s: %v", tt.name, tt.err)
		}
	}
	// The file and the log hold no token, only the hash.
	if err := s.store.Revoke(ctx, "test", "clio"); err != nil {
		t.Fatal(err)
	}
	log := s.get(s.official, "/log")
	for _, want := range []string{`"what":"token","old":"","new":"official olaf"`, `"what":"token","old":"clerk clio","new":""`} {
		if !strings.Contains(log, want) {
			t.Errorf("the log has no %s: %s", want, log)
		}
	}
	for _, suffix := range []string{"", "-wal"} {
		b, err := os.ReadFile(s.path + suffix)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(b), s.official) || strings.Contains(log, s.official) {
			t.Error("a token is kept as it is")
		}
	}
	// Where the last token goes, all doors stay shut: this service began with tokens.
	if err := s.store.Revoke(ctx, "test", "olaf"); err != nil {
		t.Fatal(err)
	}
	if status, _, _ := call(t, "", "GET", s.url+"/log", ""); status != 401 {
		t.Errorf("without any token left: %d", status)
	}
	if info, err := os.Stat(s.path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the file is %v, %v", info.Mode(), err)
	}
}

func errOf(_ string, err error) error { return err }

// TestKnownHash holds the hash to a value worked out by another program:
// printf abc | sha256sum (the example of FIPS 180-2).
func TestKnownHash(t *testing.T) {
	s := open(t)
	hash, err := hex.DecodeString("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.store.write.Exec(`INSERT INTO token VALUES ('known', 'official', ?)`, hash); err != nil {
		t.Fatal(err)
	}
	s.get("abc", "/log")
}

// TestLocal is the service without tokens: whoever reaches it may do all, until
// the first token is made.
func TestLocal(t *testing.T) {
	store := openFile(t, t.TempDir()+"/contest.db")
	s := &site{t: t, store: store, url: serveStore(t, &service{store: store, local: true}).URL}
	s.put("", "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`)
	if got := s.put("", "/classes/steers/cards/ada", `{"placing":"3-2-1-4"}`); got != `{"placing":"3-2-1-4","score":50}` {
		t.Errorf("a card: %s", got)
	}
	if got := s.get("", "/log"); !strings.Contains(got, `"who":"local"`) {
		t.Errorf("log: %s", got)
	}
	if status, _, _ := call(t, "wrong", "GET", s.url+"/standings", ""); status != 401 {
		t.Errorf("a wrong token: %d", status)
	}
	official := newToken(t, store, "official", "olaf")
	if status, _, _ := call(t, "", "GET", s.url+"/log", ""); status != 401 {
		t.Errorf("without a token, after the first was made: %d", status)
	}
	s.get(official, "/log")
}

// TestHost turns away requests for another host, as a page of another site makes
// a browser send whose name points here.
func TestHost(t *testing.T) {
	store := openFile(t, t.TempDir()+"/contest.db")
	url := serveStore(t, &service{store: store, local: true, hosts: []string{"contest.example.org"}}).URL
	for _, tt := range []struct {
		host string
		want int
	}{
		{"127.0.0.1", 200}, {"127.0.0.1:8080", 200}, {"localhost", 200}, {"LOCALHOST:1", 200}, {"contest.example.org", 200}, {"Contest.Example.org:443", 200},
		{"evil.example", 421}, {"127.0.0.1.evil.example", 421}, {"127.0.0.2", 421}, {"10.0.0.1", 421}, {"[::1]", 421}, {"0.0.0.0", 421}, {"x.contest.example.org", 421}, {"localhost.", 421},
	} {
		for _, path := range []string{"/health", "/standings", "/elsewhere"} {
			req, _ := http.NewRequest("GET", url+path, nil)
			req.Host = tt.host
			resp, err := http.DefaultClient.Do(req)
			if err != nil {
				t.Fatal(err)
			}
			body, _ := io.ReadAll(resp.Body)
			resp.Body.Close()
			want := tt.want
			if path == "/elsewhere" && want == 200 {
				want = 404
			}
			if resp.StatusCode != want {
				t.Errorf("%s of %s: %d, want %d", path, tt.host, resp.StatusCode, want)
			}
			if want == 421 {
				if p := problems(t, 421, resp.Header.Get("Content-Type"), string(body)); p.Problems[0].Path != "Host" || p.Problems[0].Value != tt.host {
					t.Errorf("%s", body)
				}
			}
		}
	}
}
