package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"net/http/httptest"
	"slices"
	"strconv"
	"testing"

	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// This file is the only one that knows package contest: its tally, made anew from
// the cards, is the second witness of the sums that the tables keep.

// tally works out the standings from every card.
func tally(t testing.TB, s *Store, v View) Standings {
	t.Helper()
	ctx := context.Background()
	type namedClass struct {
		name string
		Class
	}
	classes, err := list(ctx, s.read, func(c *namedClass) []any { return []any{&c.name, &c.Official, &c.State} }, `SELECT name, official, state FROM class ORDER BY name`)
	if err != nil {
		t.Fatal(err)
	}
	out := Standings{Classes: []string{}, Members: []Rank{}, Teams: []Rank{}}
	var officials []contest.OfficialPlacing
	for _, c := range classes {
		if v.Open || c.State == stateClosed {
			out.Classes = append(out.Classes, c.name)
			officials = append(officials, contest.OfficialPlacing{Class: c.name, Order: c.Official.Order(), Cuts: c.Official.Cuts()})
		}
	}
	if len(out.Classes) == 0 {
		return out
	}
	value, err := contest.ParsePoints(strconv.Itoa(placing.FullScore * len(out.Classes)))
	if err != nil {
		t.Fatal(err)
	}
	c, err := contest.NewContest("", contest.Format{Name: "contest", Components: []contest.Component{{
		Name: "placing", Kind: contest.KindPlacing, Classes: out.Classes, Value: value,
	}}}, contest.Scoring{}, officials, nil)
	if err != nil {
		t.Fatal(err)
	}
	tally := c.Tally()
	members, err := list(ctx, s.read, func(m *contest.Member) []any { return []any{&m.ID, &m.Team, &m.Division} }, `SELECT name, team, division FROM member`)
	if err != nil {
		t.Fatal(err)
	}
	byName := map[string]contest.Member{}
	for _, m := range members {
		byName[m.ID] = m
		if err := tally.Enter(m); err != nil {
			t.Fatal(err)
		}
	}
	type named struct {
		cardRow
		class, member string
	}
	cards, err := list(ctx, s.read, func(r *named) []any { return append(scanCard(&r.cardRow), &r.class, &r.member) }, `SELECT placing, mark, class, member FROM card`)
	if err != nil {
		t.Fatal(err)
	}
	for _, card := range cards {
		if !slices.Contains(out.Classes, card.class) {
			continue
		}
		item, err := c.Placing(contest.PlacingCard{Class: card.class, Member: byName[card.member], Card: card.Card()})
		if err == nil {
			err = tally.Add(item)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	st, err := tally.Standings(contest.View{Division: v.Division})
	if err != nil {
		t.Fatal(err)
	}
	out.Of = whole(t, st.Of)
	for _, l := range st.Members {
		out.Members = append(out.Members, Rank{l.Rank, l.Member.ID, l.Member.Team, l.Member.Division, whole(t, l.Total), len(l.Missing)})
	}
	for _, l := range st.Teams {
		out.Teams = append(out.Teams, Rank{Rank: l.Rank, Name: l.Team, Points: whole(t, l.Total)})
	}
	return out
}

// whole is a number of points that has no parts of a point.
func whole(t testing.TB, p contest.Points) int {
	n, err := strconv.Atoi(p.String())
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// sameStandings holds every view of a store to the tally.
func sameStandings(t testing.TB, s *Store, divisions ...string) {
	t.Helper()
	for _, open := range []bool{false, true} {
		for _, division := range append(divisions, "") {
			v := View{Open: open, Division: division, From: 1, Count: maxCount}
			got, err := s.Standings(context.Background(), v)
			if errors.Is(err, placing.ErrUnknown) && division != "" {
				continue // nobody is in it now
			}
			if err != nil {
				t.Fatal(err)
			}
			want := tally(t, s, v)
			if fmt.Sprintf("%+v", got) != fmt.Sprintf("%+v", want) {
				t.Fatalf("%+v\n got %+v\nwant %+v", v, got, want)
			}
		}
	}
}

// TestStandingsAgree makes changes of every kind at random, and again and again
// holds the sums that the tables keep to those of the library's tally.
func TestStandingsAgree(t *testing.T) {
	const seed = 13
	ctx := context.Background()
	r := rand.New(rand.NewPCG(seed, 1))
	s := openFile(t, t.TempDir()+"/contest.db")
	pick := func(from ...string) string { return from[r.IntN(len(from))] }
	orders := orders4()
	kinds := map[string]int{}
	for i := range 1500 {
		class, member := pick("a", "b", "c", "d"), pick("9", "10", "ada", "bo", "cy", "dee", "007")
		var kind string
		var err error
		switch n := r.IntN(20); {
		case n < 2:
			kind = "key"
			err = s.SetOfficial(ctx, "test", class, mustOfficial(orders[r.IntN(24)].String()+" cuts "+pick("2-8-2", "5-5-5", "0-3-1", "9-20-9")))
		case n < 4:
			kind = "state"
			err = s.SetState(ctx, "test", class, pick(stateOpen, stateOpen, stateClosed))
		case n < 6:
			kind = "member"
			err = s.SetMember(ctx, "test", member, Member{pick("", "north", "south", "2", "10"), pick("", "junior", "senior")})
		default:
			kind = "card"
			card := placing.Card{Order: orders[r.IntN(24)]}
			if r.IntN(6) == 0 {
				card = placing.Card{Mark: []placing.Mark{placing.Blank, placing.DoubleMarked, placing.Unreadable}[r.IntN(3)]}
			}
			err = s.SetCard(ctx, "test", class, member, card)
		}
		switch {
		case errors.Is(err, errNotFound), errors.Is(err, errClosed):
			kind += " refused"
		case err != nil:
			t.Fatal(err)
		}
		kinds[kind]++
		if i%10 == 0 {
			sameStandings(t, s, "junior", "senior")
		}
	}
	sameStandings(t, s, "junior", "senior")
	for _, kind := range []string{"key", "state", "member", "card", "card refused"} {
		if kinds[kind] == 0 {
			t.Errorf("no %s in %v", kind, kinds)
		}
	}
	// No card gets into a closed class past the store, where the sums would miss it.
	if err := s.SetState(ctx, "test", "a", stateClosed); err != nil {
		t.Fatal(err)
	}
	if _, err := s.write.Exec(`INSERT INTO member (name) VALUES ('late'); INSERT INTO card (class, member, mark, score) VALUES ('a', 'late', 'blank', 0)`); err == nil {
		t.Error("a card got into a closed class")
	}
	sameStandings(t, s, "junior", "senior")
	// The same by pages of every size.
	v := View{Open: true, From: 1, Count: maxCount}
	all, err := s.Standings(ctx, v)
	if err != nil {
		t.Fatal(err)
	}
	for size := 1; size <= len(all.Members); size++ {
		var got []Rank
		for v.From, v.Count = 1, size; ; v.From += size {
			page, err := s.Standings(ctx, v)
			if err != nil {
				t.Fatal(err)
			}
			if got = append(got, page.Members...); len(page.Members) < size {
				break
			}
		}
		if !slices.Equal(got, all.Members) {
			t.Errorf("by pages of %d: %+v\nwant %+v", size, got, all.Members)
		}
	}
}

// fill enters a contest straight into the tables.
func fill(t testing.TB, s *Store, members, classes int) {
	t.Helper()
	orders := orders4()
	official := mustOfficial("3-2-1-4 cuts 2-8-2")
	err := s.change(context.Background(), "test", func(c change) error {
		var err error
		exec := func(query string, args ...any) { err = cmp.Or(err, c.exec(query, args...)) }
		for m := range members {
			exec(`INSERT INTO member (name, team, division) VALUES (?, ?, ?)`, m, fmt.Sprintf("t-%d", m/4), []string{"junior", "senior"}[m/4%2])
		}
		for k := range classes {
			exec(`INSERT INTO class (name, official) VALUES (?, ?)`, fmt.Sprintf("c-%d", k), official)
			for m := range members {
				card := placing.Card{Order: orders[(m*7+k*5+m/24)%24]}
				points, _ := score(official, card)
				exec(`INSERT INTO card (class, member, placing, score) VALUES (?, ?, ?, ?)`, fmt.Sprintf("c-%d", k), m, card.Order, points)
			}
		}
		exec(`UPDATE class SET state = 'closed' WHERE name = 'c-0'`)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// BenchmarkLarge measures a contest of 200,000 cards: 20,000 members in 10
// classes.
func BenchmarkLarge(b *testing.B) {
	s := openFile(b, b.TempDir()+"/contest.db")
	fill(b, s, 20_000, 10)
	h := (&service{store: s, local: true, hosts: []string{"example.com"}}).Handler()
	for _, path := range []string{"/standings", "/standings?count=100", "/standings?from=19001", "/standings?division=junior"} {
		b.Run("GET "+path, func(b *testing.B) {
			for b.Loop() {
				w := httptest.NewRecorder()
				if h.ServeHTTP(w, httptest.NewRequest("GET", path, nil)); w.Code != 200 {
					b.Fatal(w.Body)
				}
			}
		})
	}
	b.Run("all pages", func(b *testing.B) {
		for b.Loop() {
			for from := 1; from < 20_000; from += maxCount {
				w := httptest.NewRecorder()
				if h.ServeHTTP(w, httptest.NewRequest("GET", fmt.Sprintf("/standings?from=%d", from), nil)); w.Code != 200 {
					b.Fatal(w.Body)
				}
			}
		}
	})
	ctx := context.Background()
	orders := orders4()
	b.Run("card", func(b *testing.B) {
		for i := 0; b.Loop(); i++ {
			if err := s.SetCard(ctx, "test", "c-1", strconv.Itoa(i%20_000), placing.Card{Order: orders[i%23+i%2]}); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("close", func(b *testing.B) {
		for i := 0; b.Loop(); i++ {
			if err := s.SetState(ctx, "test", "c-1", []string{stateClosed, stateOpen}[i%2]); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("key", func(b *testing.B) {
		for i := 0; b.Loop(); i++ {
			if err := s.SetOfficial(ctx, "test", "c-1", mustOfficial([]string{"3-2-1-4 cuts 2-8-3", "3-2-1-4 cuts 2-7-2"}[i%2])); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("backup", func(b *testing.B) {
		dir := b.TempDir()
		for i := 0; b.Loop(); i++ {
			if err := s.Backup(ctx, fmt.Sprintf("%s/%d.db", dir, i)); err != nil {
				b.Fatal(err)
			}
		}
	})
}
