// Command store keeps a judging contest in one file and serves it over HTTP. An
// official writes the key of each class, clerks write the cards, and the public
// sees the standings of the classes that are closed.
//
//	$ official=$(go run . token official olaf)
//	$ clerk=$(go run . token clerk clio)
//	$ go run . serve &
//	$ curl -X PUT --oauth2-bearer $official --json '{"official": "3-2-1-4 cuts 2-8-2"}' 127.0.0.1:8080/classes/steers
//	{"official":"3-2-1-4 cuts 2-8-2","state":"open"}
//	$ curl -X PUT --oauth2-bearer $clerk --json '{"team": "north", "division": "junior"}' 127.0.0.1:8080/members/7
//	{"team":"north","division":"junior"}
//	$ curl -X PUT --oauth2-bearer $clerk --json '{"placing": "1-3-2-4"}' 127.0.0.1:8080/classes/steers/cards/7
//	{"placing":"1-3-2-4"}
//	$ curl -X PUT --oauth2-bearer $clerk --json '{"mark": "blank"}' 127.0.0.1:8080/classes/steers/cards/8
//	{"mark":"blank"}
//	$ curl -X PUT --oauth2-bearer $clerk --json '{"placing": null}' 127.0.0.1:8080/classes/steers/cards/7
//	{"title":"Unprocessable Entity","status":422,"detail":"placing: null: bad syntax; allowed: a text in quotes","problems":[{"path":"placing","field":"placing","value":"null","allowed":"a text in quotes","reason":"bad syntax"}]}
//	$ curl --oauth2-bearer $official 127.0.0.1:8080/classes/steers/cards/7
//	{"placing":"1-3-2-4","score":32,"faults":[{"upper":3,"lower":1,"points":10},{"upper":2,"lower":1,"points":8}]}
//	$ curl 127.0.0.1:8080/standings
//	{"classes":[],"of":0,"members":[],"teams":[]}
//	$ curl -X PUT --oauth2-bearer $official --json '{"state": "closed"}' 127.0.0.1:8080/classes/steers/state
//	{"official":"3-2-1-4 cuts 2-8-2","state":"closed"}
//	$ curl 127.0.0.1:8080/standings?division=junior
//	{"classes":["steers"],"of":50,"members":[{"rank":1,"name":"7","team":"north","division":"junior","points":32}],"teams":[{"rank":1,"name":"north","points":32}]}
//	$ curl --oauth2-bearer $official 127.0.0.1:8080/log?after=6
//	[{"id":7,"at":"2026-11-26T00:23:52.441Z","who":"olaf","what":"state","class":"steers","old":"open","new":"closed"}]
//	$ curl 127.0.0.1:8080/health
//	{"status":"ok"}
//	$ go run . backup monday.db
//
// A token has one role. Officials write keys, open and close classes and see all;
// clerks write cards and members, and see no key or score before a class is
// closed. To correct a card of a closed class, an official opens it again. Until
// the first token is made, the service listens on this machine alone, and whoever
// has a login there may do all.
//
// It speaks plain HTTP. To serve others, put a proxy that speaks TLS before it,
// and give the name that people ask for with -host; a request that names another
// host is refused. There is no limit on how often one may ask; that is for the
// proxy too.
//
// The people and places here are invented. The standings are for teaching.
package main

import (
	"cmp"
	"context"
	"errors"
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
	flags.SetOutput(io.Discard)
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		_, err = fmt.Fprintln(out, usage)
		return err
	case err != nil:
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
