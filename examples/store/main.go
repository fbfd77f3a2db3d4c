// Command store is a contest service.
package main

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"example.com/ribface/placing"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := run(ctx, os.Args[1:], os.Stdout, slog.Default()); err != nil {
		fmt.Fprintln(os.Stderr, "store:", err)
		os.Exit(1)
	}
}

const usage = `usage: store [-file contest.db] [-addr 127.0.0.1:8080] [-host name,name] [command]
  serve             serve until stopped; this is what no command does
  token ROLE NAME   make a token for a clerk or an official and print it
  revoke NAME       take a token away
  backup FILE       write all to a new file, while the service may go on`

// run does one command.
func run(ctx context.Context, args []string, out io.Writer, log *slog.Logger) error {
	flags := flag.NewFlagSet("store", flag.ContinueOnError)
	file := flags.String("file", "contest.db", "database file")
	addr := flags.String("addr", "127.0.0.1:8080", "address to listen on; loopback until there are tokens")
	host := flags.String("host", "", "names by which the service is asked for, with commas between")
	flags.Usage = func() { fmt.Fprintln(flags.Output(), usage) }
	if err := flags.Parse(args); err != nil {
		return err
	}
	command, args := cmp.Or(flags.Arg(0), "serve"), flags.Args()[min(1, flags.NArg()):]
	if n, known := map[string]int{"serve": 0, "token": 2, "revoke": 1, "backup": 1}[command]; !known || len(args) != n {
		return refuse("command", strings.Join(flags.Args(), " "), "serve, token ROLE NAME, revoke NAME or backup FILE", placing.ErrSyntax)
	}
	if command == "revoke" || command == "backup" { // these make no file
		if _, err := os.Stat(*file); err != nil {
			return err
		}
	}
	store, err := Open(ctx, *file)
	if err != nil {
		return err
	}
	defer func() { _ = store.Close() }() // every change is on the disk already
	const by = "command line"
	switch command {
	case "token":
		token, err := store.NewToken(ctx, by, args[0], args[1])
		if err == nil {
			_, err = fmt.Fprintln(out, token)
		}
		return err
	case "revoke":
		return store.Revoke(ctx, by, args[0])
	case "backup":
		return store.Backup(ctx, args[0])
	}
	return store.serve(ctx, *addr, *host, log)
}
