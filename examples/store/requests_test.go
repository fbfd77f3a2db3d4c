package main

import (
	"encoding/json"
	"net/http"
	"slices"
	"strings"
	"testing"
)

func TestBadRequests(t *testing.T) {
	s := open(t)
	s.put(s.official, "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`)
	s.put(s.official, "/classes/shut", `{"official":"1-2 cuts 5"}`)
	s.put(s.official, "/classes/shut/state", `{"state":"closed"}`)
	s.put(s.clerk, "/classes/steers/cards/ada", `{"placing":"3-2-1-4"}`)
	s.put(s.clerk, "/members/ada", `{"team":"","division":"junior"}`)
	before, log := s.get(s.official, "/standings"), s.get(s.official, "/log")

	const (
		cards    = "/classes/steers/cards/bo"
		over     = "/classes/steers/cards/ada" // where a card of 50 points is
		aCard    = "a placing, as 3-2-1-4, or a mark: blank, double-marked, unreadable"
		cardBody = "an object with placing, mark"
	)
	const library = "any words of the library"
	type one = refusal
	for _, tt := range []struct {
		name, method, path, body string
		status                   int
		want                     []one // path, field, value, allowed, reason
	}{
		{"an empty card", "PUT", over, `{}`, 422, []one{{"placing", "placing", "", aCard, "missing", nil}}},
		{"a null card", "PUT", over, `null`, 422, []one{{"body", "body", "null", cardBody, "bad syntax", nil}}},
		{"a null placing", "PUT", over, `{"placing":null}`, 422, []one{{"placing", "placing", "null", "a text in quotes", "bad syntax", nil}}},
		{"a null mark", "PUT", over, `{"mark":null}`, 422, []one{{"mark", "mark", "null", "a text in quotes", "bad syntax", nil}}},
		{"two nulls, both told", "PUT", over, `{"placing":null,"mark":null}`, 422, []one{{"placing", "placing", "null", "a text in quotes", "bad syntax", nil}, {"mark", "mark", "null", "a text in quotes", "bad syntax", nil}}},
		{"an empty placing", "PUT", over, `{"placing":""}`, 422, []one{{"placing", "placing", "", aCard, "missing", nil}}},
		{"an empty mark", "PUT", over, `{"mark":""}`, 422, []one{{"placing", "placing", "", aCard, "missing", nil}}},
		{"a blank placing", "PUT", over, `{"placing":" "}`, 422, []one{{"placing", "order", " ", library, "bad syntax", nil}}},
		{"an empty list", "PUT", over, `[]`, 422, []one{{"body", "body", "[]", cardBody, "bad syntax", nil}}},
		{"an empty text", "PUT", over, `""`, 422, []one{{"body", "body", `""`, cardBody, "bad syntax", nil}}},
		{"no body", "PUT", over, ``, 400, []one{{"body", "body", "", cardBody, errBody.text, nil}}},
		{"half a body", "PUT", over, `{"placing":`, 400, []one{{"body", "body", `{"placing":`, cardBody, errBody.text, nil}}},
		{"two values", "PUT", over, `{"mark":"blank"}{}`, 400, []one{{"body", "body", `{"mark":"blank"}{}`, cardBody, errBody.text, nil}}},
		{"two placings", "PUT", over, `{"placing":"1-2-3-4","placing":"4-3-2-1"}`, 422, []one{{"placing", "placing", `"4-3-2-1"`, "one placing", "repeated", nil}}},
		{"a field that is not known", "PUT", over, `{"plasing":"1-2-3-4"}`, 422, []one{{"plasing", "plasing", `"1-2-3-4"`, cardBody, "unknown", nil}}},
		{"a field in capitals", "PUT", over, `{"Placing":"1-2-3-4"}`, 422, []one{{"Placing", "Placing", `"1-2-3-4"`, cardBody, "unknown", nil}}},
		{"a number for a placing", "PUT", over, `{"placing":3214}`, 422, []one{{"placing", "placing", "3214", "a text in quotes", "bad syntax", nil}}},
		{"an exhibit placed twice", "PUT", cards, `{"placing":"3-2-3-4"}`, 422, []one{{"placing", "order", "3-2-3-4", library, "repeated", nil}}},
		{"a card of another size", "PUT", cards, `{"placing":"1-2-3"}`, 422, []one{{"placing", "card", "1-2-3", library, "out of range", nil}}},
		{"a placing and a mark", "PUT", cards, `{"placing":"1-2-3-4","mark":"blank"}`, 422, []one{{"mark", "mark", "blank", "a placing or a mark, not both", "repeated", nil}}},
		{"a mark that is none", "PUT", cards, `{"mark":"smudged"}`, 422, []one{{"mark", "mark", "smudged", library, "unknown", nil}}},
		{"too few cuts", "PUT", "/classes/heifers", `{"official":"1-2-3 cuts 5"}`, 422, []one{{"official", "cuts", "5", library, "out of range", nil}}},
		{"no key", "PUT", "/classes/steers", `{}`, 422, []one{{"official", "official", "", "an order and its cuts, as 3-2-1-4 cuts 2-8-2", "missing", nil}}},
		{"a null key", "PUT", "/classes/steers", `{"official":null}`, 422, []one{{"official", "official", "null", "a text in quotes", "bad syntax", nil}}},
		{"a key of another size than the cards", "PUT", "/classes/steers", `{"official":"1-2 cuts 5"}`, 422, []one{{"official", "official", "1-2 cuts 5", "4 exhibits, as on the cards that are in", "out of range", nil}}},
		{"a state that is none", "PUT", "/classes/steers/state", `{"state":"shut"}`, 422, []one{{"state", "state", "shut", "open or closed", "unknown", nil}}},
		{"a class that is closed", "PUT", "/classes/shut/cards/bo", `{"placing":"1-2"}`, 409, []one{{"class", "class", "shut", "a class that is open; an official can open it again", "closed", nil}}},
		{"a class that is not there", "PUT", "/classes/nowhere/cards/bo", `{"placing":"1-2-3-4"}`, 404, []one{{"class", "class", "nowhere", "one that was entered", "not found", nil}}},
		{"to close a class that is not there", "PUT", "/classes/nowhere/state", `{"state":"closed"}`, 404, []one{{"class", "class", "nowhere", "one that was entered", "not found", nil}}},
		{"a card that is not there", "GET", cards, "", 404, []one{{"card", "card", "steers/bo", "one that was entered", "not found", nil}}},
		{"a class name with a space", "PUT", "/classes/a%20b", `{"official":"1-2 cuts 5"}`, 422, []one{{"class", "class", "a b", "1 to 40 letters, digits and hyphens", "bad syntax", nil}}},
		{"a member name too long", "PUT", "/classes/steers/cards/" + strings.Repeat("m", 41), `{"mark":"blank"}`, 422, []one{{"member", "member", strings.Repeat("m", 41), "1 to 40 letters, digits and hyphens", "bad syntax", nil}}},
		{"a team name with a tab, and no division: both told", "PUT", "/members/ada", `{"team":"a\tb"}`, 422, []one{{"team", "team", "a\tb", `1 to 40 letters, digits and hyphens, or "" for none`, "bad syntax", nil}, {"division", "division", "", `1 to 40 letters, digits and hyphens, or "" for none`, "missing", nil}}},
		{"the mark of all divisions", "PUT", "/members/ada", `{"team":"","division":"*"}`, 422, []one{{"division", "division", "*", `1 to 40 letters, digits and hyphens, or "" for none`, "bad syntax", nil}}},
		{"a division that nobody is in", "GET", "/standings?division=nobody", "", 422, []one{{"division", "division", "nobody", "junior", "unknown", nil}}},
		{"a misspelled question", "GET", "/standings?divison=junior", "", 422, []one{{"divison", "divison", "", "division, from, count", "unknown", nil}}},
		{"a question asked twice", "GET", "/standings?from=1&from=2", "", 422, []one{{"from", "from", "1, 2", "one value", "repeated", nil}}},
		{"too many lines", "GET", "/standings?count=1001", "", 422, []one{{"count", "count", "1001", "1 to 1000", "out of range", nil}}},
		{"from nothing", "GET", "/standings?from=0", "", 422, []one{{"from", "from", "0", "1 to 2147483647", "out of range", nil}}},
		{"a log from the middle of nowhere", "GET", "/log?after=x", "", 422, []one{{"after", "after", "x", "0 to 2147483647", "out of range", nil}}},
		{"a body too long", "PUT", over, `{"mark":"` + strings.Repeat("x", maxBody) + `"}`, 413, []one{{"body", "body", "over 4096 bytes", "at most 4096 bytes", "too long", nil}}},
		{"spaces without end", "PUT", over, `{}` + strings.Repeat(" ", maxBody), 413, []one{{"body", "body", "over 4096 bytes", "at most 4096 bytes", "too long", nil}}},
		{"a long value is cut", "PUT", over, `{"placing":"` + strings.Repeat("é", 100) + `"}`, 422, []one{{"placing", "order", strings.Repeat("é", 32), library, "bad syntax", nil}}},
		{"a method that is none", "DELETE", "/classes/steers", "", 405, []one{{"method", "method", "DELETE", "GET, HEAD, PUT", "not allowed", nil}}},
		{"an address that is none", "GET", "/elsewhere", "", 404, []one{{"address", "address", "/elsewhere", "/standings, /classes, /members, /log, /health", "not found", nil}}},
	} {
		token := s.official
		if strings.Contains(tt.path, "/cards/") && tt.method == "PUT" || strings.HasPrefix(tt.path, "/members") {
			token = s.clerk
		}
		status, kind, got := call(t, token, tt.method, s.url+tt.path, tt.body)
		if status != tt.status {
			t.Errorf("%s: %d %s", tt.name, status, got)
		}
		p := problems(t, tt.status, kind, got)
		for i, one := range p.Problems {
			if one.Allowed != "" && i < len(tt.want) && tt.want[i].Allowed == library {
				p.Problems[i].Allowed = library
			}
		}
		if !slices.Equal(p.Problems, tt.want) {
			t.Errorf("%s:\n got %+v\nwant %+v", tt.name, []one(p.Problems), tt.want)
		}
	}
	req, _ := http.NewRequest("PUT", s.url+"/classes/x", strings.NewReader("official=1"))
	req.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	req.Header.Set("Authorization", "Bearer "+s.official)
	resp, err := http.DefaultClient.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	defer resp.Body.Close()
	var p problem
	if err := json.NewDecoder(resp.Body).Decode(&p); err != nil || resp.StatusCode != http.StatusUnsupportedMediaType || p.Problems[0].Path != "Content-Type" {
		t.Errorf("a form gives %d %+v, %v", resp.StatusCode, p, err)
	}
	// Nothing of all this was kept: the 50 points are there, and the log is as it was.
	if got := s.get(s.official, "/standings"); got != before {
		t.Errorf("standings after bad requests: %s\nbefore: %s", got, before)
	}
	if got := s.get(s.official, "/log"); got != log {
		t.Errorf("log after bad requests: %s", got)
	}
	if !strings.Contains(before, `"name":"ada","division":"junior","points":50`) {
		t.Errorf("the card to replace: %s", before)
	}
}

// TestSameAgain sends what is there already: it is no change.
func TestSameAgain(t *testing.T) {
	s := open(t)
	for _, step := range [][3]string{
		{s.official, "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`},
		{s.clerk, "/classes/steers/cards/ada", `{"placing":"3-2-1-4"}`},
		{s.clerk, "/members/ada", `{"team":"north","division":""}`},
		{s.official, "/classes/steers/state", `{"state":"closed"}`},
	} {
		s.put(step[0], step[1], step[2])
		before := s.get(s.official, "/log")
		s.put(step[0], step[1], step[2])
		if got := s.get(s.official, "/log"); got != before {
			t.Errorf("%s again: %s", step[1], got)
		}
	}
}
