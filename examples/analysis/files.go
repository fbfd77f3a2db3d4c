package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// standard reports whether the name is that of standard output.
func standard(name string) bool { return name == "-" || name == "/dev/stdout" }

// apart refuses an output that is an input or another output, without opening any.
func apart(outputs, inputs []string, stdin io.Reader, stdout io.Writer) error {
	type file struct {
		name string
		info os.FileInfo
	}
	var in []file
	for i, name := range inputs {
		if info, err := os.Stat(name); name != "" && err == nil {
			in = append(in, file{name, info})
		}
		if i == 0 && name == "" {
			if info := regular(stdin); info != nil {
				in = append(in, file{"standard input", info})
			}
		}
	}
	taken := map[string]bool{}
	check := func(name string, info os.FileInfo) error {
		for _, f := range in {
			if os.SameFile(f.info, info) {
				return usage(fmt.Sprintf("%s is read, as %s, and cannot be written over", name, f.name))
			}
		}
		return nil
	}
	if info := regular(stdout); info != nil {
		if err := check("standard output", info); err != nil {
			return err
		}
	}
	for _, name := range outputs {
		if name == "" {
			continue
		}
		full := "-"
		if !standard(name) {
			full = resolved(name)
		}
		if taken[full] {
			return usage(name + " is written twice")
		}
		taken[full] = true
		if info, err := os.Stat(name); err == nil {
			if err := check(name, info); err != nil {
				return err
			}
		}
	}
	return nil
}

// regular gives what is known of a stream that is a file on disk; nil for others.
func regular(stream any) os.FileInfo {
	f, ok := stream.(*os.File)
	if !ok {
		return nil
	}
	if info, err := f.Stat(); err == nil && info.Mode().IsRegular() {
		return info
	}
	return nil
}

// resolved is the name of the file itself, where a name is a link to it.
func resolved(name string) string {
	if real, err := filepath.EvalSymlinks(name); err == nil {
		return real
	}
	return filepath.Clean(name)
}

// whole lets write fill the file of that name: all of it or none. The text goes to a
// file beside it, which takes its name at the end; what is no file on disk, as a pipe,
// is written as it stands. Without a name there is no writer.
func whole(name string, stdout io.Writer, write func(io.Writer) error) (err error) {
	switch {
	case name == "":
		return write(nil)
	case standard(name):
		return write(stdout)
	}
	name = resolved(name)
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		f, err := os.OpenFile(name, os.O_WRONLY, 0)
		if err != nil {
			return err
		}
		return errors.Join(write(f), f.Close())
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".part-*")
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	if err := write(f); err != nil {
		return errors.Join(err, f.Close())
	}
	mode := os.FileMode(0o644)
	if info, err := os.Stat(name); err == nil {
		mode = info.Mode().Perm()
	}
	if err := errors.Join(f.Chmod(mode), f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), name)
}

// terminal reports whether a person may be looking.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0 && info.Mode()&os.ModeDevice != 0
}
