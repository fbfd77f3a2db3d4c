package say_test

import (
	"testing"

	"example.com/ribface/examples/internal/say"
	"example.com/ribface/grade"
)

func TestWords(t *testing.T) {
	for got, want := range map[string]string{
		say.Count(1, "class", "classes"):      "1 class",
		say.Count(2, "class", "classes"):      "2 classes",
		say.And():                             "",
		say.And("fat"):                        "fat",
		say.And("fat", "ribeye", "KPH"):       "fat, ribeye and KPH",
		say.Wrap("  - ", "one two"):           "  - one two\n",
		say.Wrap("- ", ""):                    "- \n",
		say.Wrap("ab ", word+" "+word+" end"): "ab " + word + "\n   " + word + " end\n",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

const word = "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"

// TestTenth: decimals are dropped, so that nothing reads as a grade that it does not
// reach.
func TestTenth(t *testing.T) {
	for s, want := range map[string]string{"2.96": "2.9", "3": "3.0", "2.99999999": "2.9", "-0.01": "-0.1", "4.336": "4.3"} {
		y, err := grade.ParseYield(s)
		if err != nil {
			t.Fatal(err)
		}
		if got := say.Tenth(y); got != want {
			t.Errorf("%s: %s, want %s", s, got, want)
		}
	}
	if y, err := grade.ParseYield("3.17"); err != nil || say.Nearest(y) != "3.2" {
		t.Errorf("%s, want 3.2", say.Nearest(y))
	}
	if say.Word("KPH") == "" || say.Word("no such word") != "" {
		t.Error("words are explained or not")
	}
}
