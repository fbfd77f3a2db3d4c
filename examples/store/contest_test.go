package main

import (
	"regexp"
	"testing"
)

// TestContest is a contest from the first key to the standings.
func TestContest(t *testing.T) {
	s := open(t)
	if got := s.get("", "/standings"); got != `{"classes":[],"of":0,"members":[],"teams":[]}` {
		t.Fatalf("standings of nothing: %s", got)
	}
	for _, step := range []struct {
		name, token, method, path, body, want string
	}{
		{"a class", s.official, "PUT", "/classes/steers", `{"official":"3-2-1-4 cuts 2-8-2"}`, `{"official":"3-2-1-4 cuts 2-8-2","state":"open"}`},
		{"is there", s.official, "GET", "/classes/steers", "", `{"official":"3-2-1-4 cuts 2-8-2","state":"open"}`},
		{"a second class", s.official, "PUT", "/classes/heifers", `{"official":"1-2-3 cuts 5-5"}`, `{"official":"1-2-3 cuts 5-5","state":"open"}`},
		{"a card, which tells the clerk nothing of the key", s.clerk, "PUT", "/classes/steers/cards/ada-01", `{"placing":"1-3-2-4"}`, `{"placing":"1-3-2-4"}`},
		{"nor later", s.clerk, "GET", "/classes/steers/cards/ada-01", "", `{"placing":"1-3-2-4"}`},
		{"the official sees what it lost", s.official, "GET", "/classes/steers/cards/ada-01", "", `{"placing":"1-3-2-4","score":32,"faults":[{"upper":3,"lower":1,"points":10},{"upper":2,"lower":1,"points":8}]}`},
		{"another", s.clerk, "PUT", "/classes/steers/cards/bo-02", `{"placing":"3-2-1-4"}`, `{"placing":"3-2-1-4"}`},
		{"a full score has no faults", s.official, "GET", "/classes/steers/cards/bo-02", "", `{"placing":"3-2-1-4","score":50}`},
		{"a mark in place of a placing", s.clerk, "PUT", "/classes/steers/cards/cy-03", `{"mark":"double-marked"}`, `{"mark":"double-marked"}`},
		{"scores the least", s.official, "GET", "/classes/steers/cards/cy-03", "", `{"mark":"double-marked","score":6}`},
		{"a blank card", s.clerk, "PUT", "/classes/heifers/cards/ada-01", `{"mark":"blank"}`, `{"mark":"blank"}`},
		{"corrected", s.clerk, "PUT", "/classes/heifers/cards/ada-01", `{"placing":"1-3-2"}`, `{"placing":"1-3-2"}`},
		{"equal points share a rank", s.clerk, "PUT", "/classes/heifers/cards/cy-03", `{"placing":"2-1-3"}`, `{"placing":"2-1-3"}`},
		{"a member of a team", s.clerk, "PUT", "/members/ada-01", `{"team":"north","division":"junior"}`, `{"team":"north","division":"junior"}`},
		{"another", s.clerk, "PUT", "/members/bo-02", `{"team":"north","division":"senior"}`, `{"team":"north","division":"senior"}`},
		{"one who hands in nothing", s.official, "PUT", "/members/dee-04", `{"team":"south","division":"junior"}`, `{"team":"south","division":"junior"}`},
		{"one without a team", s.clerk, "PUT", "/members/cy-03", `{"team":"","division":""}`, `{"team":"","division":""}`},
		{"standings for officials", s.official, "GET", "/standings", "", `{"classes":["heifers","steers"],"of":100,"members":[` +
			`{"rank":1,"name":"ada-01","team":"north","division":"junior","points":77},` +
			`{"rank":2,"name":"cy-03","points":51},` +
			`{"rank":3,"name":"bo-02","team":"north","division":"senior","points":50,"missing":1},` +
			`{"rank":4,"name":"dee-04","team":"south","division":"junior","points":0,"missing":2}],` +
			`"teams":[{"rank":1,"name":"north","points":127},{"rank":2,"name":"south","points":0}]}`},
		{"nothing for the public yet", "", "GET", "/standings", "", `{"classes":[],"of":0,"members":[],"teams":[]}`},
		{"nor for clerks", s.clerk, "GET", "/standings", "", `{"classes":[],"of":0,"members":[],"teams":[]}`},
		{"the class is closed", s.official, "PUT", "/classes/heifers/state", `{"state":"closed"}`, `{"official":"1-2-3 cuts 5-5","state":"closed"}`},
		{"and the public sees it", "", "GET", "/standings", "", `{"classes":["heifers"],"of":50,"members":[` +
			`{"rank":1,"name":"ada-01","team":"north","division":"junior","points":45},` +
			`{"rank":1,"name":"cy-03","points":45},` +
			`{"rank":3,"name":"bo-02","team":"north","division":"senior","points":0,"missing":1},` +
			`{"rank":3,"name":"dee-04","team":"south","division":"junior","points":0,"missing":1}],` +
			`"teams":[{"rank":1,"name":"north","points":45},{"rank":2,"name":"south","points":0}]}`},
		{"a closed class shows its scores", s.clerk, "GET", "/classes/heifers/cards/ada-01", "", `{"placing":"1-3-2","score":45,"faults":[{"upper":2,"lower":3,"points":5}]}`},
		{"the key changes", s.official, "PUT", "/classes/heifers", `{"official":"1-3-2 cuts 5-6"}`, `{"official":"1-3-2 cuts 5-6","state":"closed"}`},
		{"and the standings with it", "", "GET", "/standings", "", `{"classes":["heifers"],"of":50,"members":[` +
			`{"rank":1,"name":"ada-01","team":"north","division":"junior","points":50},` +
			`{"rank":2,"name":"cy-03","points":33},` +
			`{"rank":3,"name":"bo-02","team":"north","division":"senior","points":0,"missing":1},` +
			`{"rank":3,"name":"dee-04","team":"south","division":"junior","points":0,"missing":1}],` +
			`"teams":[{"rank":1,"name":"north","points":50},{"rank":2,"name":"south","points":0}]}`},
		{"one division", s.official, "GET", "/standings?division=senior", "", `{"classes":["heifers","steers"],"of":100,"members":[` +
			`{"rank":1,"name":"bo-02","team":"north","division":"senior","points":50,"missing":1}],"teams":[{"rank":1,"name":"north","points":50}]}`},
		{"some lines", "", "GET", "/standings?from=2&count=2", "", `{"classes":["heifers"],"of":50,"members":[` +
			`{"rank":2,"name":"cy-03","points":33},` +
			`{"rank":3,"name":"bo-02","team":"north","division":"senior","points":0,"missing":1}],` +
			`"teams":[{"rank":2,"name":"south","points":0}]}`},
		{"a page that begins within a tie", "", "GET", "/standings?from=4&count=1", "", `{"classes":["heifers"],"of":50,"members":[` +
			`{"rank":3,"name":"dee-04","team":"south","division":"junior","points":0,"missing":1}],"teams":[]}`},
		{"opened again", s.official, "PUT", "/classes/heifers/state", `{"state":"open"}`, `{"official":"1-3-2 cuts 5-6","state":"open"}`},
		{"the public sees it no more", "", "GET", "/standings", "", `{"classes":[],"of":0,"members":[],"teams":[]}`},
		{"health", "", "GET", "/health", "", `{"status":"ok"}`},
	} {
		status, kind, got := call(t, step.token, step.method, s.url+step.path, step.body)
		if status != 200 || got != step.want || kind != "application/json" {
			t.Fatalf("%s: %d %s\n got %s\nwant %s", step.name, status, kind, got, step.want)
		}
	}
	// Every change is in the log, with what was there before, and nothing else.
	got := regexp.MustCompile(`"at":"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z"`).ReplaceAllString(s.get(s.official, "/log?after=2"), `"at":""`)
	want := `[{"id":3,"at":"","who":"olaf","what":"key","class":"steers","old":"","new":"3-2-1-4 cuts 2-8-2"},` +
		`{"id":4,"at":"","who":"olaf","what":"key","class":"heifers","old":"","new":"1-2-3 cuts 5-5"},` +
		`{"id":5,"at":"","who":"clio","what":"card","class":"steers","member":"ada-01","old":"","new":"1-3-2-4"},` +
		`{"id":6,"at":"","who":"clio","what":"card","class":"steers","member":"bo-02","old":"","new":"3-2-1-4"},` +
		`{"id":7,"at":"","who":"clio","what":"card","class":"steers","member":"cy-03","old":"","new":"double-marked"},` +
		`{"id":8,"at":"","who":"clio","what":"card","class":"heifers","member":"ada-01","old":"","new":"blank"},` +
		`{"id":9,"at":"","who":"clio","what":"card","class":"heifers","member":"ada-01","old":"blank","new":"1-3-2"},` +
		`{"id":10,"at":"","who":"clio","what":"card","class":"heifers","member":"cy-03","old":"","new":"2-1-3"},` +
		`{"id":11,"at":"","who":"clio","what":"member","member":"ada-01","old":"\"\" \"\"","new":"\"north\" \"junior\""},` +
		`{"id":12,"at":"","who":"clio","what":"member","member":"bo-02","old":"\"\" \"\"","new":"\"north\" \"senior\""},` +
		`{"id":13,"at":"","who":"olaf","what":"member","member":"dee-04","old":"\"\" \"\"","new":"\"south\" \"junior\""},` +
		`{"id":14,"at":"","who":"olaf","what":"state","class":"heifers","old":"open","new":"closed"},` +
		`{"id":15,"at":"","who":"olaf","what":"key","class":"heifers","old":"1-2-3 cuts 5-5","new":"1-3-2 cuts 5-6"},` +
		`{"id":16,"at":"","who":"olaf","what":"state","class":"heifers","old":"closed","new":"open"}]`
	if got != want {
		t.Errorf("log\n got %s\nwant %s", got, want)
	}
	if got := s.get(s.official, "/log?after=15&count=1"); !regexp.MustCompile(`^\[{"id":16,.*}\]$`).MatchString(got) {
		t.Errorf("the last line: %s", got)
	}
	if _, err := s.store.write.Exec(`UPDATE log SET who = 'x'`); err == nil {
		t.Error("the log can be changed")
	}
	if _, err := s.store.write.Exec(`DELETE FROM log`); err == nil {
		t.Error("the log can be emptied")
	}
}
