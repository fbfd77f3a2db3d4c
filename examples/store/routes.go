package main

import (
	"context"
	"errors"
	"log/slog"
	"math"
	"net/http"
	"time"

	"example.com/ribface/placing"
)

// handleTime is the most that one request may take.
const handleTime = 5 * time.Second

// service answers requests from a store.
type service struct {
	store *Store
	log   *slog.Logger
	hosts []string // names of this service beside its address
	local bool     // started without tokens, on an address that only this machine can reach
}

// Handler returns the routes. What changes something is a PUT, which no page of
// another site can make a browser send.
func (s *service) Handler() http.Handler {
	mux := http.NewServeMux()
	for _, route := range []struct {
		pattern string
		who     Role
		answer  func(*request) (any, error)
	}{
		{"GET /health", everyone, s.getHealth},
		{"GET /standings", everyone, s.getStandings},
		{"GET /classes/{class}", Official, s.getClass},
		{"PUT /classes/{class}", Official, s.putClass},
		{"PUT /classes/{class}/state", Official, s.putState},
		{"GET /classes/{class}/cards/{member}", Clerk | Official, s.getCard},
		{"PUT /classes/{class}/cards/{member}", Clerk, s.putCard},
		{"PUT /members/{member}", Clerk | Official, s.putMember},
		{"GET /log", Official, s.getLog},
	} {
		mux.HandleFunc(route.pattern, func(w http.ResponseWriter, r *http.Request) {
			v, err := s.admit(w, r, route.who, route.answer)
			s.send(w, r, v, err)
		})
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		ctx, cancel := context.WithTimeout(r.Context(), handleTime)
		defer cancel()
		r = r.WithContext(ctx)
		if !s.knows(r) {
			s.send(w, r, nil, refuse("Host", r.Host, "the address or a name of this service", errHost))
			return
		}
		if h, pattern := mux.Handler(r); pattern == "" {
			s.send(w, r, nil, s.lost(w, r, h))
			return
		}
		mux.ServeHTTP(w, r)
	})
}

// admit answers those who may ask.
func (s *service) admit(w http.ResponseWriter, r *http.Request, who Role, answer func(*request) (any, error)) (any, error) {
	u, err := s.user(r)
	switch {
	case err != nil:
		return nil, err
	case u.role&who != 0:
		return answer(&request{r, w, u})
	case u.role == Public:
		return nil, refuse("Authorization", "", "Bearer and the token of "+who.String(), errNoToken)
	default:
		return nil, refuse("Authorization", "the token of "+u.role.String(), "the token of "+who.String(), errRole)
	}
}

// lost says what is wrong with an address or a method that has no route.
func (s *service) lost(w http.ResponseWriter, r *http.Request, h http.Handler) error {
	said := header{}
	h.ServeHTTP(said, r) // of the library: not found, or the methods that are allowed
	if allow := said.Header().Get("Allow"); allow != "" {
		w.Header().Set("Allow", allow)
		return refuse("method", r.Method, allow, errMethod)
	}
	return refuse("address", r.URL.Path, "/standings, /classes, /members, /log, /health", errNotFound)
}

// header is an answer of which only the header is looked at.
type header http.Header

func (h header) Header() http.Header         { return http.Header(h) }
func (h header) Write(b []byte) (int, error) { return len(b), nil }
func (h header) WriteHeader(int)             {}

type healthBody struct {
	Status string `json:"status"`
}

func (s *service) getHealth(q *request) (any, error) {
	return healthBody{"ok"}, s.store.Healthy(q.Context())
}

func (s *service) getStandings(q *request) (any, error) {
	asked, err := q.query("division", "from", "count")
	if err != nil {
		return nil, err
	}
	v := View{Open: q.seesAll(), Division: asked["division"]}
	if v.From, err = number("from", asked["from"], 1, 1, math.MaxInt32); err != nil {
		return nil, err
	}
	if v.Count, err = number("count", asked["count"], maxCount, 1, maxCount); err != nil {
		return nil, err
	}
	return s.store.Standings(q.Context(), v)
}

func (s *service) getClass(q *request) (any, error) {
	class, err := q.name("class")
	if err != nil {
		return nil, err
	}
	return s.store.Class(q.Context(), class)
}

func (s *service) putClass(q *request) (any, error) {
	class, err := q.name("class")
	if err != nil {
		return nil, err
	}
	body, err := q.body("official")
	if err != nil {
		return nil, err
	}
	if body["official"] == "" {
		return nil, refuse("official", "", "an order and its cuts, as 3-2-1-4 cuts 2-8-2", placing.ErrMissing)
	}
	o, err := placing.ParseOfficial(body["official"])
	if err != nil {
		return nil, at("official", err)
	}
	if err := s.store.SetOfficial(q.Context(), q.who.name, class, o); err != nil {
		return nil, err
	}
	return s.getClass(q)
}

func (s *service) putState(q *request) (any, error) {
	class, err := q.name("class")
	if err != nil {
		return nil, err
	}
	body, err := q.body("state")
	if err != nil {
		return nil, err
	}
	state := body["state"]
	if state != stateOpen && state != stateClosed {
		return nil, refuse("state", state, stateOpen+" or "+stateClosed, placing.ErrUnknown)
	}
	if err := s.store.SetState(q.Context(), q.who.name, class, state); err != nil {
		return nil, err
	}
	return s.getClass(q)
}

// cardBody is a card; what it scores is not shown before its class is closed.
type cardBody struct {
	Placing placing.Order `json:"placing,omitzero"`
	Mark    placing.Mark  `json:"mark,omitzero"`
	Score   *int          `json:"score,omitempty"`
	Faults  []fault       `json:"faults,omitempty"`
}

// fault is a pair that the card has the wrong way round.
type fault struct {
	Upper  int `json:"upper"`
	Lower  int `json:"lower"`
	Points int `json:"points"`
}

func (s *service) getCard(q *request) (any, error) {
	class, member, err := q.cardNames()
	if err != nil {
		return nil, err
	}
	card, err := s.store.Card(q.Context(), class, member)
	if err != nil {
		return nil, err
	}
	out := cardBody{Placing: card.Order, Mark: card.Mark}
	of, err := s.store.Class(q.Context(), class)
	if err != nil || of.State == stateOpen && !q.seesAll() {
		return out, err
	}
	points, err := score(of.Official, card)
	out.Score = &points
	for f := range of.Official.Faults(card.Order) {
		out.Faults = append(out.Faults, fault(f))
	}
	return out, err
}

func (s *service) putCard(q *request) (any, error) {
	class, member, err := q.cardNames()
	if err != nil {
		return nil, err
	}
	body, err := q.body("placing", "mark")
	if err != nil {
		return nil, err
	}
	order, placed := body["placing"]
	mark, marked := body["mark"]
	var card placing.Card
	path := "placing"
	switch {
	case placed && marked:
		return nil, refuse("mark", mark, "a placing or a mark, not both", placing.ErrRepeated)
	case placed && order != "":
		card.Order, err = placing.ParseOrder(order)
	case marked && mark != "":
		path = "mark"
		card.Mark, err = placing.ParseMark(mark)
	default:
		return nil, refuse("placing", "", "a placing, as 3-2-1-4, or a mark: blank, double-marked, unreadable", placing.ErrMissing)
	}
	if err != nil {
		return nil, at(path, err)
	}
	err = s.store.SetCard(q.Context(), q.who.name, class, member, card)
	switch why := (*reason)(nil); {
	case errors.As(err, &why): // of the class
		return nil, err
	case err != nil:
		return nil, at(path, err)
	}
	return s.getCard(q)
}

func (s *service) putMember(q *request) (any, error) {
	member, err := q.name("member")
	if err != nil {
		return nil, err
	}
	body, err := q.body("team", "division")
	if err != nil {
		return nil, err
	}
	var wrong refusals
	for _, field := range []string{"team", "division"} {
		v, given := body[field]
		if !given || v != "" && !isName(v) {
			why := placing.ErrSyntax
			if !given {
				why = placing.ErrMissing
			}
			wrong = append(wrong, refuse(field, v, `1 to 40 letters, digits and hyphens, or "" for none`, why)...)
		}
	}
	if wrong != nil {
		return nil, wrong
	}
	m := Member{body["team"], body["division"]}
	return m, s.store.SetMember(q.Context(), q.who.name, member, m)
}

func (s *service) getLog(q *request) (any, error) {
	asked, err := q.query("after", "count")
	if err != nil {
		return nil, err
	}
	after, err := number("after", asked["after"], 0, 0, math.MaxInt32)
	if err != nil {
		return nil, err
	}
	count, err := number("count", asked["count"], maxCount, 1, maxCount)
	if err != nil {
		return nil, err
	}
	return s.store.Log(q.Context(), int64(after), count)
}
