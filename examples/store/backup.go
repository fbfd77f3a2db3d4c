package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"example.com/ribface/placing"
)

// Backup writes the whole contest, as it is at one moment, to a new file, while
// the service goes on. The file is checked and on the disk before it gets its
// name; there is no half a backup. A file that is there is left as it is.
func (s *Store) Backup(ctx context.Context, path string) (err error) {
	if _, err := os.Lstat(path); !errors.Is(err, os.ErrNotExist) {
		return &placing.FieldError{Field: "backup", Value: path, Allowed: "a file that is not there yet", Err: errors.Join(err, os.ErrExist)}
	}
	f, err := os.CreateTemp(filepath.Dir(path), filepath.Base(path)+".*.part") // for its owner alone
	if err != nil {
		return err
	}
	part := f.Name()
	defer func() {
		err = errors.Join(err, f.Close())
		if err != nil {
			_ = os.Remove(part)
		}
	}()
	if _, err := s.read.ExecContext(ctx, `VACUUM INTO ?`, part); err != nil {
		return err
	}
	if err := sound(ctx, part); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	if err := os.Rename(part, path); err != nil {
		return err
	}
	dir, err := os.Open(filepath.Dir(path))
	if err != nil {
		return err
	}
	return errors.Join(dir.Sync(), dir.Close())
}

// sound checks every page of a file.
func sound(ctx context.Context, path string) error {
	db, err := connect(path, 1, "mode=ro")
	if err != nil {
		return err
	}
	defer func() { _ = db.Close() }() // nothing was written
	var said string
	if err := db.QueryRowContext(ctx, `PRAGMA integrity_check(1)`).Scan(&said); err != nil {
		return err
	}
	if said != "ok" {
		return fmt.Errorf("%s: %s", path, said)
	}
	return nil
}
