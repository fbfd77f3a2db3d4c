package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/placing"
)

// limits of one request.
const (
	maxBody  = 4 << 10
	maxName  = 40
	maxCount = 1000 // lines of a list
)

// request is a request with who sends it.
type request struct {
	*http.Request
	w   http.ResponseWriter
	who user
}

// seesAll reports whether keys and scores of open classes may be shown.
func (q *request) seesAll() bool { return q.who.role&Official != 0 }

// isName reports whether v is 1 to 40 letters, digits and hyphens.
func isName(v string) bool {
	ok := v != "" && len(v) <= maxName
	for _, c := range []byte(v) {
		ok = ok && (c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-')
	}
	return ok
}

func badName(field, v string) error {
	return refuse(field, v, "1 to 40 letters, digits and hyphens", placing.ErrSyntax)
}

// name returns a name from the address.
func (q *request) name(part string) (string, error) {
	v := q.PathValue(part)
	if !isName(v) {
		return "", badName(part, v)
	}
	return v, nil
}

// cardNames returns the class and the member of a card from the address.
func (q *request) cardNames() (class, member string, err error) {
	if class, err = q.name("class"); err == nil {
		member, err = q.name("member")
	}
	return class, member, err
}

// query returns what is asked for after the question mark, each thing once.
func (q *request) query(names ...string) (map[string]string, error) {
	got := map[string]string{}
	for name, values := range q.URL.Query() {
		if !slices.Contains(names, name) {
			return nil, refuse(clip(name), "", strings.Join(names, ", "), placing.ErrUnknown)
		}
		if len(values) > 1 {
			return nil, refuse(name, strings.Join(values, ", "), "one value", placing.ErrRepeated)
		}
		got[name] = values[0]
	}
	return got, nil
}

// number reads a number; empty text is the number that is usual.
func number(field, s string, usual, least, most int) (int, error) {
	if s == "" {
		return usual, nil
	}
	n, err := strconv.Atoi(s)
	if err != nil || n < least || n > most {
		return 0, refuse(field, s, fmt.Sprintf("%d to %d", least, most), placing.ErrRange)
	}
	return n, nil
}

// body reads a JSON object whose members are texts, each of the given names at
// most once. It tells everything that is wrong with it.
func (q *request) body(names ...string) (map[string]string, error) {
	allowed := "an object with " + strings.Join(names, ", ")
	if kind := q.Header.Get("Content-Type"); kind != "" {
		if t, _, err := mime.ParseMediaType(kind); err != nil || t != "application/json" {
			return nil, refuse("Content-Type", kind, "application/json", errMedia)
		}
	}
	b, err := io.ReadAll(http.MaxBytesReader(q.w, q.Body, maxBody))
	var long *http.MaxBytesError
	switch {
	case errors.As(err, &long):
		return nil, refuse("body", fmt.Sprintf("over %d bytes", maxBody), fmt.Sprintf("at most %d bytes", maxBody), errTooLong)
	case err != nil || !json.Valid(b):
		return nil, refuse("body", string(b), allowed, errBody)
	}
	d := json.NewDecoder(bytes.NewReader(b)) // gives no errors from here on
	if t, _ := d.Token(); t != json.Delim('{') {
		return nil, refuse("body", string(b), allowed, placing.ErrSyntax)
	}
	got := map[string]string{}
	var wrong refusals
	for d.More() {
		key, _ := d.Token()
		name := key.(string)
		var value json.RawMessage
		_ = d.Decode(&value)
		var text *string
		_, twice := got[name]
		switch err := json.Unmarshal(value, &text); {
		case !slices.Contains(names, name):
			wrong = append(wrong, refuse(clip(name), string(value), allowed, placing.ErrUnknown)...)
		case twice:
			wrong = append(wrong, refuse(name, string(value), "one "+name, placing.ErrRepeated)...)
		case err != nil || text == nil:
			wrong = append(wrong, refuse(name, string(value), "a text in quotes", placing.ErrSyntax)...)
		default:
			got[name] = *text
		}
	}
	if wrong != nil {
		return nil, wrong
	}
	return got, nil
}
