package main

import (
	"bufio"
	"context"
	"fmt"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"sync"
	"syscall"
	"testing"
	"time"
)

// asService makes the test binary the service itself, so that a test can start it
// as a process of its own and kill that.
const asService = "STORE_TEST_AS_SERVICE"

func TestMain(m *testing.M) {
	if os.Getenv(asService) == "" {
		os.Exit(m.Run())
	}
	main()
}

// start runs the service as a process and returns its address.
func start(t *testing.T, file string) (*exec.Cmd, string) {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-file", file, "-addr", "127.0.0.1:0", "serve")
	cmd.Env = append(os.Environ(), asService+"=1")
	stderr, err := cmd.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = cmd.Process.Kill() }) // an error where it has ended
	said := bufio.NewScanner(stderr)
	for said.Scan() {
		if at := regexp.MustCompile(`address=(\S+)`).FindStringSubmatch(said.Text()); at != nil {
			go func() {
				for said.Scan() { // so that it can go on talking
				}
			}()
			return cmd, "http://" + at[1]
		}
	}
	t.Fatal("the service did not start")
	return nil, ""
}

// written is what one client wrote: the changes that were acknowledged since the
// start, and the one that it has no answer for.
type written struct {
	acknowledged []string
	asked        string
}

// TestKill kills the service in the middle of writes, again and again on one file.
// Every card that was acknowledged is there and in the log, one that was not is
// there as a whole or not at all, and the sums agree with the cards. (A kill takes
// the process; that the disk itself keeps what it was told to is not tried here.)
func TestKill(t *testing.T) {
	const clients = 8
	rounds := 6
	if testing.Short() {
		rounds = 2
	}
	r := rand.New(rand.NewPCG(7, 7))
	path := filepath.Join(t.TempDir(), "contest.db")
	store, err := Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	fill(t, store, 300, 2) // members who are in c-0 and c-1, for changes of many cards at once
	clerk, official := newToken(t, store, "clerk", "clio"), newToken(t, store, "official", "olaf")
	if err := store.SetOfficial(context.Background(), "test", "steers", mustOfficial("3-2-1-4 cuts 2-8-2")); err != nil {
		t.Fatal(err)
	}
	if err := store.Close(); err != nil {
		t.Fatal(err)
	}
	orders := orders4()
	all := make([]written, clients)
	for round := range rounds {
		cmd, url := start(t, path)
		var group sync.WaitGroup
		for client := range clients {
			w := &all[client]
			group.Go(func() {
				for i := client; ; i++ {
					w.asked = orders[i%24].String()
					status, _, got, err := try(clerk, "PUT", fmt.Sprintf("%s/classes/steers/cards/k-%d", url, client), `{"placing":"`+w.asked+`"}`)
					if err != nil {
						return // killed
					}
					if status != http.StatusOK {
						t.Errorf("%d %s", status, got)
						return
					}
					w.acknowledged = append(w.acknowledged, w.asked)
				}
			})
		}
		group.Go(func() { // keys change and classes open and close, many cards at once
			for i := 0; ; i++ {
				for _, step := range [][2]string{
					{"/classes/steers", `{"official":"3-2-1-4 cuts ` + []string{"2-8-2", "5-5-5"}[i%2] + `"}`},
					{"/classes/c-1/state", `{"state":"` + []string{"closed", "open"}[i%2] + `"}`},
					{"/classes/c-0", `{"official":"1-2-3-4 cuts ` + []string{"1-2-3", "3-2-1"}[i%2] + `"}`},
				} {
					status, _, got, err := try(official, "PUT", url+step[0], step[1])
					if err != nil {
						return
					}
					if status != http.StatusOK {
						t.Errorf("%d %s", status, got)
						return
					}
				}
			}
		})
		time.Sleep(time.Duration(100+r.IntN(400)) * time.Millisecond)
		if err := cmd.Process.Signal(syscall.SIGKILL); err != nil {
			t.Fatal(err)
		}
		_ = cmd.Wait()
		if s, ok := cmd.ProcessState.Sys().(syscall.WaitStatus); !ok || s.Signal() != syscall.SIGKILL {
			t.Fatalf("it ended by itself: %v", cmd.ProcessState)
		}
		group.Wait()

		store, err := Open(context.Background(), path)
		if err != nil {
			t.Fatal(err)
		}
		kept := cards(t, store)
		n := 0
		for client := range all {
			w := &all[client]
			name := fmt.Sprintf("k-%d", client)
			lines, err := list(context.Background(), store.read, scanName, `SELECT new FROM log WHERE what = 'card' AND member = ? ORDER BY id`, name)
			if err != nil {
				t.Fatal(err)
			}
			// A card that is there already is acknowledged and no change. The one
			// that has no answer may be there.
			with := append(slices.Clone(w.acknowledged), w.asked)
			if slices.Equal(lines, slices.Compact(slices.Clone(with))) {
				w.acknowledged = with
			}
			if want := slices.Compact(slices.Clone(w.acknowledged)); !slices.Equal(lines, want) {
				t.Errorf("round %d: %s has %d lines in the log, want %d", round, name, len(lines), len(want))
			}
			if len(lines) > 0 && kept["steers/"+name] != lines[len(lines)-1] {
				t.Errorf("round %d: %s is %q, the log says %q", round, name, kept["steers/"+name], lines[len(lines)-1])
			}
			n += len(w.acknowledged)
		}
		sameStandings(t, store)
		if err := store.Close(); err != nil {
			t.Fatal(err)
		}
		if err := sound(context.Background(), path); err != nil {
			t.Error(err)
		}
		t.Logf("round %d: %d cards acknowledged so far", round, n)
		if n == 0 {
			t.Error("killed before the first card")
		}
	}
}
