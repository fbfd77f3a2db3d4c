package sheet_test

import (
	"context"
	"io"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/internal/testkit/everytype"
)

// TestEveryType holds every exported type to what the module promises of all.
func TestEveryType(t *testing.T) {
	const text = "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,steer,A60,A50,Sm40,0.5,13.4,2.5,800\n2,ox,A60,A50,Sm40,0.5,13.4,2.5,800\n"
	p, err := sheet.Propose(strings.NewReader("Tag,HCW (lb),BF,REA,Marb\nT1,800,.5,13,500\n"))
	if err != nil {
		t.Fatal(err)
	}
	r, err := sheet.NewReader(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	var rows []sheet.GradedRow
	var refused *sheet.RowError
	for g, err := range r.Grade(context.Background(), grade.Rules{Edition: grade.Current}) {
		if e, ok := err.(*sheet.RowError); ok {
			refused = e
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, g)
	}
	if refused == nil || len(rows) != 1 {
		t.Fatalf("%d rows, refused %v", len(rows), refused)
	}
	w, err := sheet.NewWriter(io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	graded, err := sheet.NewGradedWriter(io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	row := sheet.Row{ID: "1", Carcass: rows[0].Assessment.Carcass}
	var column sheet.Column
	for c := range sheet.Columns() {
		column = c
	}
	everytype.Run(t, ".", column, refused, sheet.Flag{}, sheet.WeightUnit, p, p.Mapping, sheet.Assumed{}, sheet.MaturityNumbers, sheet.Assumptions(9), row, rows[0], r.Counts(), r, w, graded)
}
