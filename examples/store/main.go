// Command store is a small contest service: it keeps official placings and cards
// in an embedded SQL database and serves scores, faults and standings over HTTP.
// It shows how the library's values go into and out of a database and JSON, and
// how its errors become answers.
//
//	go run . -addr 127.0.0.1:8080 -file contest.db
//	curl -X PUT --json '{"official": "3-2-1-4 cuts 2-8-2"}' 127.0.0.1:8080/classes/steers
//	curl -X PUT --json '{"team": "north", "division": "junior"}' 127.0.0.1:8080/members/member-7
//	curl -X PUT --json '{"placing": "1-3-2-4"}' 127.0.0.1:8080/classes/steers/cards/member-7
//	curl 127.0.0.1:8080/classes/steers/cards/member-7
//	curl 127.0.0.1:8080/standings
//
// There is no login; keep it on an address that only you can reach.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"
)

func main() {
	addr := flag.String("addr", "127.0.0.1:8080", "address to listen on")
	file := flag.String("file", "contest.db", "database file")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := run(ctx, *addr, *file, slog.Default()); err != nil {
		fmt.Fprintln(os.Stderr, "store:", err)
		os.Exit(1)
	}
}

// run serves until ctx ends, then lets the requests under way finish.
func run(ctx context.Context, addr, file string, log *slog.Logger) error {
	store, err := Open(ctx, file)
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", addr)
	if err != nil {
		return errors.Join(err, store.Close())
	}
	log.Info("listening", "address", listener.Addr().String())
	server := newServer(&service{store: store, log: log})
	return errors.Join(serve(ctx, server, listener), store.Close())
}

// newServer sets a limit on everything a client can draw out.
func newServer(s *service) *http.Server {
	return &http.Server{
		Handler:           s.Handler(),
		ReadHeaderTimeout: 2 * time.Second,
		ReadTimeout:       5 * time.Second,
		WriteTimeout:      10 * time.Second,
		IdleTimeout:       30 * time.Second,
		MaxHeaderBytes:    maxHeader,
	}
}

const shutdownTime = 10 * time.Second

// serve runs the server until ctx ends and shuts it down.
func serve(ctx context.Context, server *http.Server, listener net.Listener) error {
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	limit, cancel := context.WithTimeout(context.Background(), shutdownTime)
	defer cancel()
	if err := server.Shutdown(limit); err != nil {
		return err
	}
	if err := <-failed; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}
