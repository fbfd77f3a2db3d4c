package main

import (
	"context"
	"encoding/json"
	"errors"
	"net/http"
	"strings"

	"example.com/ribface/placing"
)

// reason says why something is refused, with the status of the answer. For the
// reasons of the library it is 422.
type reason struct {
	status int
	text   string
}

func (r *reason) Error() string { return r.text }

var (
	errNotFound = &reason{http.StatusNotFound, "not found"}
	errClosed   = &reason{http.StatusConflict, "closed"}
	errNoToken  = &reason{http.StatusUnauthorized, "missing"}
	errToken    = &reason{http.StatusUnauthorized, "unknown"}
	errRole     = &reason{http.StatusForbidden, "not allowed"}
	errHost     = &reason{http.StatusMisdirectedRequest, "not this service"}
	errMethod   = &reason{http.StatusMethodNotAllowed, "not allowed"}
	errTooLong  = &reason{http.StatusRequestEntityTooLarge, "too long"}
	errMedia    = &reason{http.StatusUnsupportedMediaType, "not JSON"}
	errBody     = &reason{http.StatusBadRequest, "not JSON, or not all of it came"}
)

// refusal is one thing that is wrong with a request.
type refusal struct {
	Path    string `json:"path"` // where it stands: a member of the body, a part of the address, a header
	Field   string `json:"field"`
	Value   string `json:"value"` // as given; empty when missing
	Allowed string `json:"allowed"`
	Reason  string `json:"reason"`
	err     error
}

// refusals are all that is wrong with a request.
type refusals []refusal

// refuse refuses a value that stands under its own name.
func refuse(field, value, allowed string, err error) refusals {
	return refusals{{field, field, clip(value), allowed, err.Error(), err}}
}

// at says where in a request the value stands that the library or the store
// refuses; at "" it stands under its own name. Another error stays as it is.
func at(path string, err error) error {
	var r refusals
	var fe *placing.FieldError
	var pe *placing.ParseError
	switch {
	case errors.As(err, &fe):
		r = refuse(fe.Field, fe.Value, fe.Allowed, fe.Err)
	case errors.As(err, &pe):
		r = refuse(pe.Kind, pe.Input, pe.Allowed, pe.Err)
	default:
		return err
	}
	if path != "" {
		r[0].Path = path
	}
	return r
}

// Error gives one line for each.
func (rs refusals) Error() string {
	var lines []string
	for _, r := range rs {
		line := r.Path
		for _, s := range []string{r.Field, r.Value, r.Reason} {
			if s != "" && s != r.Path {
				line += ": " + s
			}
		}
		lines = append(lines, line+"; allowed: "+r.Allowed)
	}
	return strings.Join(lines, "\n")
}

func (rs refusals) Unwrap() error { return rs[0].err }

// clip shortens a value that is told back.
func clip(s string) string {
	const most = 64
	if len(s) > most {
		s = s[:most]
	}
	return strings.ToValidUTF8(s, "")
}

// problem is the body of an answer that is an error (RFC 9457).
type problem struct {
	Title    string   `json:"title"`
	Status   int      `json:"status"`
	Detail   string   `json:"detail"`
	Problems refusals `json:"problems,omitempty"`
}

// problemOf says how an error is answered. What went wrong inside stays inside.
func problemOf(err error) problem {
	p := problem{Status: http.StatusUnprocessableEntity}
	var why *reason
	switch err = at("", err); {
	case errors.As(err, &p.Problems):
		p.Detail = p.Problems.Error()
		if errors.As(err, &why) {
			p.Status = why.status
		}
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled):
		p.Status, p.Detail = http.StatusServiceUnavailable, "the request took too long or was given up"
	default:
		p.Status, p.Detail = http.StatusInternalServerError, "the request could not be answered; it is in the log"
	}
	p.Title = http.StatusText(p.Status)
	return p
}

// send writes an answer as JSON: the value, or the problem where there is an error.
func (s *service) send(w http.ResponseWriter, r *http.Request, v any, err error) {
	status, kind := http.StatusOK, "application/json"
	if err != nil {
		p := problemOf(err)
		if p.Status >= http.StatusInternalServerError {
			s.log.Error("request", "method", r.Method, "path", r.URL.Path, "status", p.Status, "error", err)
		}
		if p.Status == http.StatusUnauthorized {
			w.Header().Set("WWW-Authenticate", "Bearer")
		}
		v, status, kind = p, p.Status, "application/problem+json"
	}
	b, err := json.Marshal(v)
	if err != nil {
		s.log.Error("answer", "path", r.URL.Path, "error", err)
		http.Error(w, "the answer could not be written", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Cache-Control", "no-store")
	w.Header().Set("X-Content-Type-Options", "nosniff")
	w.WriteHeader(status)
	if _, err := w.Write(append(b, '\n')); err != nil {
		s.log.Info("client gone", "path", r.URL.Path, "error", err)
	}
}
