package svg_test

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"example.com/ribface/examples/internal/svg"
)

func TestTenth(t *testing.T) {
	for v, want := range map[svg.Tenth]string{0: "0", 10: "1", 125: "12.5", -5: "-0.5", -130: "-13"} {
		if got := v.String(); got != want {
			t.Errorf("%d: %s, want %s", int(v), got, want)
		}
	}
}

// TestWellFormed draws one of each and reads it as XML, with words that would end
// a tag.
func TestWellFormed(t *testing.T) {
	c := svg.New(100*svg.Px, 50*svg.Px, `A "title" <1>`, "What it shows & more")
	a, b := svg.Point{X: 5, Y: 10}, svg.Point{X: 105, Y: 20}
	c.Text(a, "small", "words <b> & more", "")
	c.Rect(a, 30, 40, `fill="#fff"`)
	c.Line(a, b, `stroke="#000"`)
	c.Polyline([]svg.Point{a, b}, `stroke="#000"`)
	c.Polygon([]svg.Point{a, b, a}, "")
	c.Circle(b, 15, "")
	c.Smooth([]svg.Point{{X: 0, Y: 0}, {X: 20, Y: 0}, {X: 20, Y: 30}}, "")
	got := string(c.Bytes())
	var shapes []string
	for d := xml.NewDecoder(strings.NewReader(got)); ; {
		tok, err := d.Token()
		if err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("%v in\n%s", err, got)
		}
		if e, ok := tok.(xml.StartElement); ok {
			shapes = append(shapes, e.Name.Local)
		}
	}
	if want := "svg title style rect text rect line polyline polygon circle path"; strings.Join(shapes, " ") != want {
		t.Errorf("%v, want %s", shapes, want)
	}
	for _, want := range []string{`<path d="M1,0 Q2,0 2,1.5 Q2,3 1,1.5 Q0,0 1,0 Z"/>`, `<polygon points="0.5,1 10.5,2 0.5,1"/>`, `<circle cx="10.5" cy="2" r="1.5"/>`, `>words &lt;b&gt; &amp; more</text>`, `aria-label="A &#34;title&#34; &lt;1&gt;. What it shows &amp; more"`} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
}
