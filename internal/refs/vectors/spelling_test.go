package vectors

import (
	"errors"
	"fmt"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// readers are the readers of text, by the name of what they read.
var readers = []struct {
	name string
	read func(string) (string, error)
}{
	{"maturity", spelled(maturity.Parse)},
	{"permanent incisors", spelled(maturity.ParseTeeth)},
	{"months by papers", spelled(maturity.ParseMonths)},
	{"marbling", spelled(grade.ParseMarbling)},
	{"degree", spelled(grade.ParseDegree)},
	{"quality", spelled(grade.ParseQuality)},
	{"sex class", spelled(grade.ParseSex)},
	{"firmness", spelled(grade.ParseFirmness)},
	{"dark cutting", spelled(grade.ParseDarkCut)},
	{"edition", spelled(grade.ParseEdition)},
	{"thickness", spelled(func(s string) (grade.Thickness, error) { return grade.ParseThickness(s) })},
	{"area", spelled(func(s string) (grade.Area, error) { return grade.ParseArea(s) })},
	{"share", spelled(func(s string) (grade.Share, error) { return grade.ParseShare(s) })},
	{"weight", spelled(func(s string) (grade.Weight, error) { return grade.ParseWeight(s) })},
	{"yield", spelled(func(s string) (grade.Yield, error) { return grade.ParseYield(s) })},
	{"order", spelled(placing.ParseOrder)},
	{"cuts", spelled(placing.ParseCuts)},
	{"ranking", spelled(placing.ParseRanking)},
	{"points", spelled(func(s string) (contest.Points, error) { return contest.ParsePoints(s) })},
}

func spelled[T fmt.Stringer](parse func(string) (T, error)) func(string) (string, error) {
	return func(s string) (string, error) {
		v, err := parse(s)
		return v.String(), err
	}
}

// reasons are the reasons for which text is refused.
var reasons = []error{grade.ErrMissing, grade.ErrSyntax, grade.ErrUnknown, grade.ErrRange, grade.ErrPlaces, grade.ErrRepeated}

// texts are what golden/grade.txt, golden/maturity.txt and golden/placing.txt read, and
// more spellings of the same.
var texts = []string{
	"", " ", "A00", "A100", "E100", "C5", "A7x", "F20", "A101", "a50", "A 50", "B99", "A(150)", "A-", "D0", "A 100",
	"Sm40", "Small40", "Small 40", "small 40", "Slightly Abundant 40", "MdAb00", "Sm100", "Ab100", "Sm4", "Xx40", "Sm101", "Devoid00", "sm40", "SM40", "PD67", "Practically Devoid 67", "Tr 34", "Small", "Slightly Abundant",
	"0.45", "0.45 in", "0.45in", "11mm", "11 mm", "1.1 cm", "12.4 sq in", "80 sq cm", "2.5%", "2.5 %", "842 lb", "842lb", "380 kg", "1e3", "+1", "-0.1", "0.00001", "0.0001", "1.", ".5", "12 oz", "300000", "1,000", "\u22121", "1 2", "NaN", "inf", "0x10", "\u0663", "1000000000000000000000",
	"Low Choice", "low choice", "Choice-", "Choice+", "Choice", "Average Select", "No grade", "Best", "prime", "High Prime", "Ch", "2.952", "-2.38", "2.123456789", "2.12345678",
	"steer", "Steer", "heifer", "ox", "slightly firm", "Slightly Firm", "one third", "full", "none", "2017", "1996", "2", "2 permanent incisors", "9", "29 months", "601", "not looked at",
	"3-2-1-4", "3 2 1 4", "3214", "1", "1-1", "1-3", "0-1", "1-02", "2-1", "-1", "1-2-", "1-2-3-4-5-6-7-8-9-10-11-12", "1-2-3-4-5-6-7-8-9-10-11-12-13", "2-8-2", "2 8 2", "51-0-0", "1 3=4 2", "1=2", "1 1",
	"42", "7.5", "7.12345", "-3",
}

var spellingFile = maker{
	File: File{
		Name:   "spellings",
		About:  "Text that each reader accepts, with the form in which the value is written, and text that it refuses, with the reason.",
		Rule:   "The reasons are missing, bad syntax, unknown (no such name), out of range, too many places, repeated. See the document of each Parse function.",
		Source: "",
	},
	solve: func(v Vector) (Object, error) {
		for _, r := range readers {
			if r.name != Text(v.In, "kind") {
				continue
			}
			s, err := r.read(Text(v.In, "text"))
			if err == nil {
				return Object{"value": s}, nil
			}
			for _, why := range reasons {
				if errors.Is(err, why) {
					return Object{"refused": why.Error()}, nil
				}
			}
			return nil, fmt.Errorf("refused without a reason: %w", err)
		}
		return nil, fmt.Errorf("no reader of %q", Text(v.In, "kind"))
	},
	inputs: func(*tables) ([]Vector, error) {
		var all []Vector
		for _, r := range readers {
			for _, s := range texts {
				all = append(all, Vector{From: "the golden files, and more", In: Object{"kind": r.name, "text": s}})
			}
		}
		return all, nil
	},
}
