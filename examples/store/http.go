package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"mime"
	"net/http"
	"time"

	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// limits of one request.
const (
	maxBody    = 4 << 10
	maxName    = 40
	maxHeader  = 8 << 10
	handleTime = 5 * time.Second
)

// service answers requests from a store.
type service struct {
	store *Store
	rules placing.CardRules
	log   *slog.Logger
}

// Handler returns the routes.
func (s *service) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("PUT /classes/{class}", s.answer(s.putClass))
	mux.HandleFunc("GET /classes/{class}", s.answer(s.getClass))
	mux.HandleFunc("PUT /classes/{class}/cards/{member}", s.answer(s.putCard))
	mux.HandleFunc("GET /classes/{class}/cards/{member}", s.answer(s.getCard))
	mux.HandleFunc("PUT /members/{member}", s.answer(s.putMember))
	mux.HandleFunc("GET /standings", s.answer(s.getStandings))
	return mux
}

type classBody struct {
	Official placing.Official `json:"official"`
}

type cardBody struct {
	Placing placing.Order `json:"placing,omitzero"`
	Mark    placing.Mark  `json:"mark,omitzero"`
}

type memberBody struct {
	Team     string `json:"team,omitzero"`
	Division string `json:"division,omitzero"`
}

type scoredBody struct {
	cardBody
	Score  int           `json:"score"`
	Faults []faultedPair `json:"faults"`
}

type faultedPair struct {
	Upper  int `json:"upper"`
	Lower  int `json:"lower"`
	Points int `json:"points"`
}

func (s *service) putClass(w http.ResponseWriter, r *http.Request) (any, error) {
	class, err := name(r, "class")
	if err != nil {
		return nil, err
	}
	var body classBody
	if err := decode(w, r, &body); err != nil {
		return nil, err
	}
	if !body.Official.IsValid() {
		return nil, &placing.FieldError{Field: "official", Allowed: "an order and its cuts, as 3-2-1-4 cuts 2-8-2", Err: placing.ErrMissing}
	}
	return body, s.store.SetOfficial(r.Context(), class, body.Official)
}

func (s *service) getClass(_ http.ResponseWriter, r *http.Request) (any, error) {
	class, err := name(r, "class")
	if err != nil {
		return nil, err
	}
	o, err := s.store.Official(r.Context(), class)
	return classBody{o}, err
}

func (s *service) putCard(w http.ResponseWriter, r *http.Request) (any, error) {
	class, member, err := cardNames(r)
	if err != nil {
		return nil, err
	}
	var body cardBody
	if err := decode(w, r, &body); err != nil {
		return nil, err
	}
	score, err := s.store.SetCard(r.Context(), s.rules, class, member, placing.Card{Order: body.Placing, Mark: body.Mark})
	if err != nil {
		return nil, err
	}
	return struct {
		Score int `json:"score"`
	}{score}, nil
}

func (s *service) getCard(_ http.ResponseWriter, r *http.Request) (any, error) {
	class, member, err := cardNames(r)
	if err != nil {
		return nil, err
	}
	card, err := s.store.Card(r.Context(), class, member)
	if err != nil {
		return nil, err
	}
	o, err := s.store.Official(r.Context(), class)
	if err != nil {
		return nil, err
	}
	score, err := s.rules.Score(o, card)
	if err != nil {
		return nil, err
	}
	out := scoredBody{cardBody: cardBody{card.Order, card.Mark}, Score: score, Faults: []faultedPair{}}
	for f := range o.Faults(card.Order) {
		out.Faults = append(out.Faults, faultedPair(f))
	}
	return out, nil
}

func (s *service) putMember(w http.ResponseWriter, r *http.Request) (any, error) {
	member, err := name(r, "member")
	if err != nil {
		return nil, err
	}
	var body memberBody
	if err := decode(w, r, &body); err != nil {
		return nil, err
	}
	for field, v := range map[string]string{"team": body.Team, "division": body.Division} {
		if v != "" && !isName(v) {
			return nil, badName(field, v)
		}
	}
	return body, s.store.SetMember(r.Context(), contest.Member{ID: member, Team: body.Team, Division: body.Division})
}

func (s *service) getStandings(_ http.ResponseWriter, r *http.Request) (any, error) {
	e, err := s.store.Everything(r.Context())
	if err != nil {
		return nil, err
	}
	return standings(e, s.rules, r.URL.Query().Get("division"))
}

// name returns a name from the path.
func name(r *http.Request, part string) (string, error) {
	v := r.PathValue(part)
	if !isName(v) {
		return "", badName(part, v)
	}
	return v, nil
}

// cardNames returns the class and the member of a card from the path.
func cardNames(r *http.Request) (class, member string, err error) {
	if class, err = name(r, "class"); err == nil {
		member, err = name(r, "member")
	}
	return class, member, err
}

// isName reports whether v is 1 to 40 letters, digits and hyphens.
func isName(v string) bool {
	ok := v != "" && len(v) <= maxName
	for _, c := range []byte(v) {
		ok = ok && (c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-')
	}
	return ok
}

func badName(field, v string) error {
	return &placing.FieldError{Field: field, Value: fmt.Sprintf("%.60q", v), Allowed: "1 to 40 letters, digits and hyphens", Err: placing.ErrSyntax}
}

// errRequest is a request that is wrong in form, with the status that says how.
type errRequest struct {
	status int
	detail string
}

func (e *errRequest) Error() string { return e.detail }

// decode reads one JSON value of known fields and nothing after it.
func decode(w http.ResponseWriter, r *http.Request, into any) error {
	if kind := r.Header.Get("Content-Type"); kind != "" {
		if t, _, err := mime.ParseMediaType(kind); err != nil || t != "application/json" {
			return &errRequest{http.StatusUnsupportedMediaType, "the body must be application/json"}
		}
	}
	d := json.NewDecoder(http.MaxBytesReader(w, r.Body, maxBody))
	d.DisallowUnknownFields()
	err := d.Decode(into)
	if err == nil {
		if _, end := d.Token(); end != io.EOF {
			err = errors.New("more than one JSON value")
			var big *http.MaxBytesError
			if errors.As(end, &big) {
				err = end
			}
		}
	}
	var big *http.MaxBytesError
	var fe *placing.FieldError
	var pe *placing.ParseError
	switch {
	case err == nil, errors.As(err, &fe), errors.As(err, &pe):
		return err
	case errors.As(err, &big):
		return &errRequest{http.StatusRequestEntityTooLarge, fmt.Sprintf("the body may have %d bytes", big.Limit)}
	default:
		return &errRequest{http.StatusBadRequest, "the body is not the JSON that is wanted: " + err.Error()}
	}
}

// problem is the body of an answer that is an error (RFC 9457).
type problem struct {
	Title   string `json:"title"`
	Status  int    `json:"status"`
	Detail  string `json:"detail"`
	Field   string `json:"field,omitempty"`
	Value   string `json:"value,omitempty"`
	Allowed string `json:"allowed,omitempty"`
}

// problemOf says how an error is answered. What went wrong inside stays inside.
func problemOf(err error) problem {
	var fe *placing.FieldError
	var pe *placing.ParseError
	var re *errRequest
	p := problem{Status: http.StatusUnprocessableEntity, Detail: err.Error()}
	switch {
	case errors.As(err, &fe):
		p.Field, p.Value, p.Allowed = fe.Field, fe.Value, fe.Allowed
	case errors.As(err, &pe):
		p.Field, p.Value, p.Allowed = pe.Kind, pe.Input, pe.Allowed
	case errors.As(err, &re):
		p.Status = re.status
	case errors.Is(err, errNotFound):
		p.Status = http.StatusNotFound
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled):
		p.Status, p.Detail = http.StatusServiceUnavailable, "the request took too long or was given up"
	default:
		p.Status, p.Detail = http.StatusInternalServerError, "the request could not be answered; it is in the log"
	}
	p.Title = http.StatusText(p.Status)
	return p
}

// answer turns a function into a handler: a time limit, then JSON for the result
// or for the problem.
func (s *service) answer(f func(http.ResponseWriter, *http.Request) (any, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		ctx, cancel := context.WithTimeout(r.Context(), handleTime)
		defer cancel()
		v, err := f(w, r.WithContext(ctx))
		status, kind := http.StatusOK, "application/json"
		if err != nil {
			p := problemOf(err)
			if p.Status >= http.StatusInternalServerError {
				s.log.Error("request", "method", r.Method, "path", r.URL.Path, "status", p.Status, "error", err)
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
		w.WriteHeader(status)
		if _, err := w.Write(append(b, '\n')); err != nil {
			s.log.Info("client gone", "path", r.URL.Path, "error", err)
		}
	}
}
