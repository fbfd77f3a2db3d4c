package class_test

import (
	"errors"
	"fmt"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
)

func grid(t *testing.T) price.Grid {
	t.Helper()
	g, err := price.New(weekly())
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestByValue(t *testing.T) {
	// On the averages of ams-ct155-2025-01-06 at a base of 300: Choice and yields
	// of 3 to 4 take nothing, Select -28.25 with 1.77 for a yield of 2.0 to 2.5,
	// Standard -40.93 with -12.45 for a yield of 4 to 5.
	g := graded(t, four())
	v, err := g.ByValue(grid(t), price.ByHead, nil)
	if err != nil {
		t.Fatal(err)
	}
	var cwt []string
	for _, x := range v.Values {
		cwt = append(cwt, x.PerCwt().String())
	}
	if diff := cmp.Diff([]string{"300", "273.52", "300", "246.62"}, cwt); diff != "" {
		t.Errorf("per cwt (-want +got):\n%s", diff)
	}
	if v.Order.String() != "1=3 2 4" {
		t.Errorf("order %v", v.Order)
	}
	v, err = g.ByValue(grid(t), price.ByCwt, map[int][]price.Attribute{3: {price.DairyType}})
	if err != nil || v.Order.String() != "1 3 2 4" {
		t.Errorf("with an attribute: %v, %v", v.Order, err)
	}
	if v, err = g.ByValue(grid(t), price.ByCwt, map[int][]price.Attribute{1: {price.DairyType}, 4: {price.DairyType}}); err != nil || v.Order.String() != "3 1 2 4" {
		t.Errorf("attributes on the first and the last: %v, %v", v.Order, err)
	}
	_, err = g.ByValue(grid(t), price.ByHead, map[int][]price.Attribute{0: nil})
	wantError(t, "attributes", "attributes: exhibit: 0: out of range; allowed: 1 to 4", err)
	_, err = g.ByValue(grid(t), price.ByHead, map[int][]price.Attribute{5: nil})
	wantError(t, "attributes", "attributes: exhibit: 5: out of range; allowed: 1 to 4", err)
	_, err = class.Graded{}.ByValue(grid(t), price.ByHead, nil)
	wantError(t, "zero", "class: missing; allowed: a class that Class.Grade has graded", err)
	light := four()
	light.Posted = grade.Pounds(300)
	_, err = graded(t, light).ByValue(grid(t), price.ByHead, nil)
	var fe *placing.FieldError
	if !errors.Is(err, price.ErrNoPrice) || !errors.As(err, &fe) || fe.Field != "exhibit 1: weight" {
		t.Errorf("no price: %v", err)
	}
}

func ExampleGraded_ByValue() {
	grid, err := price.New(weekly())
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := exampleGraded().ByValue(grid, price.ByHead, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.Order, v.Values[0].PerHead())
	pairs, _ := examplePlacing().Order.Ranking().Against(v.Order)
	fmt.Println(pairs.Same, "pairs as placed,", pairs.Reversed, "the other way,", pairs.TiedThen, "of equal value")
	// Output:
	// 1=3 2 4 2400
	// 5 pairs as placed, 0 the other way, 1 of equal value
}
