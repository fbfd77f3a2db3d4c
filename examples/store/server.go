package main

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"time"

	"example.com/ribface/placing"
)

// maxHeader is the most that the header of a request may have, in bytes, beside
// the 4 KiB that the library adds.
const maxHeader = 8 << 10

// serve answers requests until ctx ends.
func (s *Store) serve(ctx context.Context, addr, hosts string, log *slog.Logger) error {
	tokens, err := s.HasTokens(ctx)
	if err != nil {
		return err
	}
	at, err := allowed(addr, tokens)
	if err != nil {
		return err
	}
	if hosts != "" && !tokens {
		return refuse("host", hosts, "no name until there are tokens", placing.ErrRange)
	}
	listener, err := net.ListenTCP("tcp", at)
	if err != nil {
		return err
	}
	log.Info("listening", "address", listener.Addr().String(), "tokens", tokens)
	service := &service{store: s, log: log, local: !tokens}
	if hosts != "" {
		service.hosts = strings.Split(strings.ToLower(hosts), ",")
	}
	return listen(ctx, newServer(service), listener)
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
		ErrorLog:          slog.NewLogLogger(s.log.Handler(), slog.LevelInfo),
	}
}

const shutdownTime = 10 * time.Second

// listen runs the server until ctx ends, then lets the requests under way finish.
func listen(ctx context.Context, server *http.Server, listener net.Listener) error {
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
