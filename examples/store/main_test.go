package main

import (
	"bytes"
	"cmp"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.com/ribface/placing"
)

// command runs a command line and returns what it prints.
func command(ctx context.Context, args ...string) (string, error) {
	var out bytes.Buffer
	err := run(ctx, args, &out, slog.New(slog.DiscardHandler))
	return out.String(), err
}

func TestCommands(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	file := filepath.Join(dir, "a b%c?.db")
	token, err := command(ctx, "-file", file, "token", "official", "olaf")
	if err != nil || len(strings.TrimSpace(token)) < 26 {
		t.Fatalf("token: %q, %v", token, err)
	}
	store := openFile(t, file)
	s := &site{t: t, store: store, url: serveStore(t, &service{store: store}).URL}
	s.put(strings.TrimSpace(token), "/classes/steers", `{"official":"1-2 cuts 5"}`)

	// While the service goes on, a backup is made and the token is taken away.
	backup := filepath.Join(dir, "backup.db")
	if _, err := command(ctx, "-file", file, "backup", backup); err != nil {
		t.Fatal(err)
	}
	if _, err := openFile(t, backup).Class(ctx, "steers"); err != nil {
		t.Error(err)
	}
	if _, err := command(ctx, "-file", file, "revoke", "olaf"); err != nil {
		t.Fatal(err)
	}
	if status, _, _ := call(t, strings.TrimSpace(token), "GET", s.url+"/log", ""); status != 401 {
		t.Errorf("revoked: %d", status)
	}

	other := filepath.Join(dir, "other.db")
	for _, tt := range []struct {
		name string
		args []string
		want string // within the error
	}{
		{"a command that is none", []string{"-file", file, "restore"}, "restore: bad syntax; allowed: serve, token ROLE NAME, revoke NAME or backup FILE"},
		{"too few words", []string{"-file", file, "token", "clerk"}, "token clerk: bad syntax"},
		{"too many words", []string{"-file", file, "serve", "now"}, "serve now: bad syntax"},
		{"a flag that is none", []string{"-port", "1"}, "flag provided but not defined"},
		{"a role that is none", []string{"-file", file, "token", "judge", "jo"}, "role: judge: unknown; allowed: clerk or official"},
		{"a token that is not there", []string{"-file", file, "revoke", "olaf"}, "name: olaf: not found"},
		{"backup over a file", []string{"-file", file, "backup", backup}, backup},
		{"backup of a file that is not there", []string{"-file", other, "backup", other + "2"}, "no such file"},
		{"revoke in a file that is not there", []string{"-file", other, "revoke", "olaf"}, "no such file"},
		{"a folder that is not there", []string{"-file", filepath.Join(dir, "no", "such.db")}, "no such file"},
		{"an impossible address", []string{"-file", file, "-addr", "256.0.0.1:1"}, "256.0.0.1"},
		{"every address without tokens", []string{"-file", file, "-addr", ":0"}, "addr: :0: out of range; allowed: a loopback address"},
		{"every address by number", []string{"-file", file, "-addr", "0.0.0.0:0"}, "allowed: a loopback address"},
		{"every address of the new kind", []string{"-file", file, "-addr", "[::]:0"}, "allowed: a loopback address"},
		{"an address of a network", []string{"-file", file, "-addr", "192.0.2.1:0"}, "allowed: a loopback address"},
		{"a name without tokens", []string{"-file", file, "-host", "contest.example.org"}, "host: contest.example.org: out of range"},
	} {
		flagOutput, err := command(ctx, tt.args...)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want %s", tt.name, err, tt.want)
		}
		if flagOutput != "" {
			t.Errorf("%s prints %s", tt.name, flagOutput)
		}
	}
	if out, err := command(ctx, "-h"); err != nil || out != usage+"\n" {
		t.Errorf("help: %q, %v", out, err)
	}
	if _, err := os.Stat(other); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a file was made: %v", err)
	}
}

// TestServe runs the service as a process, without tokens and with them, and stops
// it as a person would.
func TestServe(t *testing.T) {
	for _, tokens := range []bool{false, true} {
		path := filepath.Join(t.TempDir(), "contest.db")
		store := openFile(t, path)
		if tokens {
			newToken(t, store, "official", "olaf")
		}
		cmd, url := start(t, path)
		// What begins with tokens does not open its doors when the last is revoked.
		want := 200
		if tokens {
			want = 401
			if err := store.Revoke(context.Background(), "test", "olaf"); err != nil {
				t.Fatal(err)
			}
		}
		if status, _, got := call(t, "", "GET", url+"/log", ""); status != want {
			t.Errorf("with tokens %v: %d %s", tokens, status, got)
		}
		if err := cmd.Process.Signal(os.Interrupt); err != nil {
			t.Fatal(err)
		}
		if err := cmd.Wait(); err != nil {
			t.Errorf("stopped: %v", err)
		}
	}
}

// TestAddress is about what may be listened on.
func TestAddress(t *testing.T) {
	for _, tt := range []struct {
		addr          string
		alone, tokens bool // allowed without tokens, with them
	}{
		{"127.0.0.1:8080", true, true}, {"127.0.0.2:8080", true, true}, {"localhost:8080", true, true}, {"[::1]:8080", true, true},
		{":8080", false, true}, {"0.0.0.0:8080", false, true}, {"192.0.2.1:8080", false, true}, {"[::]:8080", false, true},
		{"127.0.0.1", false, false}, {"", false, true}, {"127.0.0.1:x", false, false},
	} {
		_, alone := allowed(tt.addr, false)
		_, tokens := allowed(tt.addr, true)
		if (alone == nil) != tt.alone || (tokens == nil) != tt.tokens {
			t.Errorf("%q: %v without tokens, %v with", tt.addr, alone, tokens)
		}
	}
}

// TestOtherFile leaves a file alone that holds something else.
func TestOtherFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "other.db")
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec(`CREATE TABLE card (class TEXT); PRAGMA user_version = 7`); err != nil {
		t.Fatal(err)
	}
	db.Close()
	var fe *placing.FieldError
	if _, err := Open(context.Background(), path); !errors.As(err, &fe) || fe.Value != "version 7" {
		t.Errorf("%v", err)
	}
	text := filepath.Join(t.TempDir(), "text.db")
	if err := os.WriteFile(text, []byte(strings.Repeat("no database\n", 1000)), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(context.Background(), text); err == nil {
		t.Error("a text is opened as a database")
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if _, err := command(stopped, "-file", filepath.Join(t.TempDir(), "a.db")); err == nil {
		t.Error("a store opened after the stop")
	}
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
	go func() { served <- listen(ctx, server, listener) }()
	got := make(chan string, 1)
	go func() {
		_, _, body := call(t, "", "GET", "http://"+listener.Addr().String(), "")
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
		t.Errorf("listen: %v", err)
	}
}

// TestSession runs the requests in the comment of main.go, and holds each answer
// to the line below it.
func TestSession(t *testing.T) {
	source, err := os.ReadFile("main.go")
	if err != nil {
		t.Fatal(err)
	}
	s := open(t)
	tokens := map[string]string{"": "", "official": s.official, "clerk": s.clerk}
	line := regexp.MustCompile(`(?m)^//\t\$ curl (?:-X (PUT) )?(?:--oauth2-bearer \$(\w+) )?(?:--json '(.*)' )?127\.0\.0\.1:8080(\S+)\n//\t(.*)$`)
	moment := regexp.MustCompile(`"at":"[^"]*"`)
	requests := line.FindAllStringSubmatch(string(source), -1)
	for _, r := range requests {
		_, _, got := call(t, tokens[r[2]], cmp.Or(r[1], "GET"), s.url+r[4], r[3])
		if moment.ReplaceAllString(got, "") != moment.ReplaceAllString(r[5], "") {
			t.Errorf("%s\n got %s\nwant %s", r[4], got, r[5])
		}
	}
	if want := strings.Count(string(source), "$ curl "); len(requests) != want || want < 10 {
		t.Errorf("%d requests were run, of %d", len(requests), want)
	}
}
