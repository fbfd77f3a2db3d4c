package main

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"net"
	"net/http"
	"net/netip"
	"slices"
	"strings"

	"example.com/ribface/placing"
)

// Role says what someone may do. No token has two roles, so that whoever writes
// a key does not write cards.
type Role uint8

// The roles.
const (
	Public   Role = 1 << iota // sees the standings of closed classes
	Clerk                     // writes members and cards
	Official                  // writes keys, opens and closes classes, sees all

	everyone = Public | Clerk | Official
)

// String names the roles, as "clerk or official".
func (r Role) String() string {
	var names []string
	for _, one := range []struct {
		role Role
		name string
	}{{Public, "public"}, {Clerk, "clerk"}, {Official, "official"}} {
		if r&one.role != 0 {
			names = append(names, one.name)
		}
	}
	return strings.Join(names, " or ")
}

// parseRole reads the role of a token; it is 0 for what is none.
func parseRole(s string) Role {
	for _, r := range []Role{Clerk, Official} {
		if r.String() == s {
			return r
		}
	}
	return 0
}

// user is who sends a request.
type user struct {
	name string
	role Role
}

// NewToken makes a token for a role and keeps its hash. The token can not be
// read again. It has 128 random bits or more, so that a plain hash is enough.
func (s *Store) NewToken(ctx context.Context, by, role, name string) (token string, err error) {
	if parseRole(role) == 0 {
		return "", &placing.FieldError{Field: "role", Value: role, Allowed: "clerk or official", Err: placing.ErrUnknown}
	}
	if !isName(name) {
		return "", badName("name", name)
	}
	token = rand.Text()
	hash := sha256.Sum256([]byte(token))
	err = s.change(ctx, by, func(c change) error {
		done, err := c.ExecContext(ctx, `INSERT INTO token (name, role, hash) VALUES (?, ?, ?) ON CONFLICT DO NOTHING`, name, role, hash[:])
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil {
			return err
		} else if n == 0 {
			return refuse("name", name, "a name without a token; revoke the old one first", placing.ErrRepeated)
		}
		return c.log("token", "", "", "", role+" "+name)
	})
	return token, err
}

// Revoke takes a token away, at once for a service that is running.
func (s *Store) Revoke(ctx context.Context, by, name string) error {
	return s.change(ctx, by, func(c change) error {
		var role string
		if err := c.QueryRowContext(ctx, `DELETE FROM token WHERE name = ? RETURNING role`, name).Scan(&role); err != nil {
			return found(err, "name", name)
		}
		return c.log("token", "", "", role+" "+name, "")
	})
}

// HasTokens reports whether anyone has a token.
func (s *Store) HasTokens(ctx context.Context) (has bool, err error) {
	err = s.read.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM token)`).Scan(&has)
	return has, err
}

// tokenRow is what is kept of a token.
type tokenRow struct {
	name, role string
	hash       []byte
}

// user finds out who sends a request. Without a token it is the public; but where
// nobody has one, the service is for one person on one machine, who may do all.
func (s *service) user(r *http.Request) (user, error) {
	tokens, err := list(r.Context(), s.store.read, func(t *tokenRow) []any { return []any{&t.name, &t.role, &t.hash} }, `SELECT name, role, hash FROM token`)
	if err != nil {
		return user{}, err
	}
	given := r.Header.Get("Authorization")
	if given == "" {
		if len(tokens) == 0 && s.local {
			return user{"local", everyone}, nil
		}
		return user{"public", Public}, nil
	}
	_, token, _ := strings.Cut(given, " ")
	hash := sha256.Sum256([]byte(token))
	var who user
	for _, t := range tokens { // every one, so that the time tells nothing
		if subtle.ConstantTimeCompare(t.hash, hash[:]) == 1 {
			who = user{t.name, parseRole(t.role)}
		}
	}
	if who.role == 0 || !strings.HasPrefix(given, "Bearer ") {
		return user{}, refuse("Authorization", "", "Bearer and a token that was not revoked", errToken)
	}
	return who, nil
}

// knows reports whether a request names this service as its host, by the address
// that it came in on or by a name that was set. A page of another site that has
// its own name point here is turned away.
func (s *service) knows(r *http.Request) bool {
	host := strings.ToLower(r.Host)
	if h, _, err := net.SplitHostPort(host); err == nil {
		host = h
	}
	if slices.Contains(s.hosts, host) {
		return true
	}
	at, _ := r.Context().Value(http.LocalAddrContextKey).(*net.TCPAddr)
	if at == nil {
		return false
	}
	if host == "localhost" {
		return at.IP.IsLoopback()
	}
	ip, err := netip.ParseAddr(strings.Trim(host, "[]"))
	return err == nil && ip.Unmap() == at.AddrPort().Addr().Unmap()
}

// allowed resolves the address to listen on. Without tokens it must be one that
// only this machine can reach.
func allowed(addr string, tokens bool) (*net.TCPAddr, error) {
	a, err := net.ResolveTCPAddr("tcp", addr)
	if err != nil {
		return nil, err
	}
	if !tokens && !a.IP.IsLoopback() {
		return nil, &placing.FieldError{Field: "addr", Value: addr, Allowed: "a loopback address, as 127.0.0.1:8080, until there are tokens", Err: placing.ErrRange}
	}
	return a, nil
}
