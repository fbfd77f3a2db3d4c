package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"example.com/ribface/placing"
)

// TestBackup backs a contest up while clerks write. The backup opens as a contest
// of its own, with everything that was acknowledged before it began.
func TestBackup(t *testing.T) {
	ctx := context.Background()
	s := open(t)
	s.put(s.official, "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`)
	orders := orders4()
	var group sync.WaitGroup
	stop := make(chan bool)
	var lock sync.Mutex
	acknowledged := map[string]string{}
	for client := range 4 {
		group.Go(func() {
			for i := 0; ; i++ {
				select {
				case <-stop:
					return
				default:
				}
				member, card := fmt.Sprintf("m-%d-%d", client, i), orders[i%24]
				if err := s.store.SetCard(ctx, "test", "steers", member, placing.Card{Order: card}); err != nil {
					t.Error(err)
					return
				}
				lock.Lock()
				acknowledged["steers/"+member] = card.String()
				lock.Unlock()
			}
		})
	}
	dir := filepath.Join(filepath.Dir(s.path), "a b%c?")
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	for i := range 5 {
		path := filepath.Join(dir, fmt.Sprintf("backup-%d.db", i))
		lock.Lock()
		before := map[string]string{}
		for k, v := range acknowledged {
			before[k] = v
		}
		lock.Unlock()
		if err := s.store.Backup(ctx, path); err != nil {
			t.Fatal(err)
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("the backup is %v, %v", info, err)
		}
		again := openFile(t, path)
		got := cards(t, again)
		for k, v := range before {
			if got[k] != v {
				t.Errorf("backup %d: %s is %q, want %q", i, k, got[k], v)
			}
		}
		sameStandings(t, again)
		t.Logf("backup %d: %d cards, %d before it began", i, len(got), len(before))
	}
	close(stop)
	group.Wait()

	// What is there is never written over, the contest itself included.
	for _, path := range []string{s.path, filepath.Join(dir, "backup-0.db"), dir} {
		before := cards(t, s.store)
		var fe *placing.FieldError
		if err := s.store.Backup(ctx, path); !errors.As(err, &fe) || fe.Value != path {
			t.Errorf("over %s: %v", path, err)
		}
		if len(cards(t, s.store)) != len(before) {
			t.Error("the contest changed")
		}
	}
	if err := s.store.Backup(ctx, filepath.Join(dir, "no", "such", "folder.db")); err == nil {
		t.Error("a backup in a folder that is not there")
	}
	// A backup that is given up leaves nothing behind.
	gone, cancel := context.WithCancel(ctx)
	cancel()
	if err := s.store.Backup(gone, filepath.Join(dir, "gone.db")); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
	for _, pattern := range []string{"gone*", "*.part"} {
		if left, _ := filepath.Glob(filepath.Join(dir, pattern)); len(left) > 0 {
			t.Errorf("left behind: %v", left)
		}
	}
}

// TestDamage finds a page that is not what was written.
func TestDamage(t *testing.T) {
	ctx := context.Background()
	s := open(t)
	fill(t, s.store, 200, 4)
	path := filepath.Join(t.TempDir(), "backup.db")
	if err := s.store.Backup(ctx, path); err != nil {
		t.Fatal(err)
	}
	if err := sound(ctx, path); err != nil {
		t.Fatal(err)
	}
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.WriteAt(make([]byte, 4096), 5*4096); err != nil {
		t.Fatal(err)
	}
	f.Close()
	if err := sound(ctx, path); err == nil {
		t.Error("a page of zeros is sound")
	}
}
