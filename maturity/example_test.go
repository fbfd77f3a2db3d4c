package maturity_test

import (
	"errors"
	"fmt"
	"slices"

	"example.com/ribface/maturity"
)

func ExampleBalance() {
	// At most 40 units apart: the mean.
	fmt.Println(maturity.Balance(maturity.A.At(0), maturity.A.At(40)))
	// Farther apart: the mean, moved 10 units toward bone.
	fmt.Println(maturity.Balance(maturity.A.At(90), maturity.A.At(30)))
	// Never more than a group from bone, and C00 at least with bone at C15 or older.
	fmt.Println(maturity.Balance(maturity.C.At(50), maturity.A.At(20)))
	// A missing score is an error that names it.
	fmt.Println(maturity.Balance(maturity.A.At(90), 0))
	// Output:
	// A20 <nil>
	// A70 <nil>
	// C00 <nil>
	// unset lean maturity: missing; allowed: A00 to E100
}

func ExampleBalancing() {
	// The zero Rules are the defaults; each choice that no source settles has a name.
	bone, lean := maturity.A.At(80), maturity.A.At(50)
	fmt.Println(maturity.Balancing{}.Balance(bone, lean))
	fmt.Println(maturity.Balancing{Tens: maturity.TensTowardBone}.Balance(bone, lean))
	fmt.Println(maturity.Balancing{Tens: maturity.TensTowardLean}.Balance(bone, lean))
	// Output:
	// A65 <nil>
	// A70 <nil>
	// A60 <nil>
}

func ExampleBalancing_Balance() {
	// Bone in B with much older lean: the arithmetic carries the score into C.
	bone, lean := maturity.B.At(90), maturity.D.At(50)
	fmt.Println(maturity.Balancing{}.Balance(bone, lean))
	fmt.Println(maturity.Balancing{OldLean: maturity.OldLeanStaysInB}.Balance(bone, lean))
	// Output:
	// C60 <nil>
	// B99 <nil>
}

func ExampleBalancing_ByAge() {
	var rules maturity.Balancing
	// Two permanent incisors: under 30 months, so group A whatever the balance says.
	fmt.Println(rules.ByAge(maturity.Evidence{Skeletal: maturity.B.At(40), Lean: maturity.B.At(20), Teeth: maturity.Incisors(2)}))
	// A skeleton in D is not opened to the young grades by its teeth.
	fmt.Println(rules.ByAge(maturity.Evidence{Skeletal: maturity.D.At(20), Lean: maturity.C.At(50), Teeth: maturity.Incisors(2)}))
	// The lean may be left out where papers settle the age.
	fmt.Println(rules.ByAge(maturity.Evidence{Skeletal: maturity.A.At(60), Papers: 22}))
	// Output:
	// A99 <nil>
	// C95 <nil>
	// A60 <nil>
}

func ExampleBalancing_ByBone() {
	// Before 18 December 2017 teeth and papers were left aside.
	fmt.Println(maturity.Balancing{}.ByBone(maturity.Evidence{Skeletal: maturity.B.At(40), Lean: maturity.B.At(20), Teeth: maturity.Incisors(2)}))
	// Output:
	// B30 <nil>
}

func ExampleBalancing_Steps() {
	var rules maturity.Balancing
	for _, step := range rules.Steps(maturity.Evidence{Skeletal: maturity.C.At(50), Lean: maturity.A.At(20), Teeth: maturity.Incisors(6)}, true) {
		fmt.Println(step)
	}
	// Output:
	// age by teeth or papers: teeth 6 permanent incisors, papers none -> balanced (30 months or more: skeletal and lean decide; derived: news-2017-maturity)
	// overall maturity: skeletal C50, lean A20 -> B45 (skeletal and lean more than 40 units apart: their mean, then 10 units toward skeletal; common-practice: quiz-quality-concepts)
	// overall maturity: B45 with skeletal C50 -> B50 (never more than one full group from skeletal; official: ams-maturity-slides, cfr-1965-53-general)
	// overall maturity: B50 with skeletal C50 -> C00 (skeletal C15 or older: not younger than C00; common-practice: quiz-quality-concepts)
}

func ExampleEvidence() {
	e := maturity.Evidence{
		Skeletal: maturity.A.At(60),
		Lean:     maturity.A.At(40),
		Teeth:    maturity.Incisors(2),
		Papers:   29,
	}
	fmt.Println(e.Skeletal, e.Lean, e.Teeth, e.Papers)
	// Output:
	// A60 A40 2 permanent incisors 29 months
}

func ExampleEvidence_Check() {
	fmt.Println(maturity.Evidence{Skeletal: maturity.A.At(160), Lean: maturity.A.At(40)}.Check(true))
	fmt.Println(maturity.Evidence{Skeletal: maturity.A.At(60)}.Check(true))
	fmt.Println(maturity.Evidence{Skeletal: maturity.A.At(60), Teeth: maturity.Incisors(9)}.Check(true))
	// Lean may be left out when teeth settle the age, and only if they may.
	young := maturity.Evidence{Skeletal: maturity.A.At(60), Teeth: maturity.Incisors(2)}
	fmt.Println(young.Check(true))
	fmt.Println(young.Check(false))
	// Output:
	// skeletal maturity: A(160): out of range; allowed: A00 to E100
	// lean maturity: missing; allowed: A00 to E100
	// lean maturity: missing; allowed: A00 to E100
	// teeth: 9 permanent incisors: out of range; allowed: 0 to 8
	// <nil>
	// lean maturity: missing; allowed: A00 to E100
}

func ExampleEvidence_Under30() {
	fmt.Println(maturity.Evidence{Teeth: maturity.Incisors(2)}.Under30())
	fmt.Println(maturity.Evidence{Teeth: maturity.Incisors(3)}.Under30())
	fmt.Println(maturity.Evidence{Teeth: maturity.Incisors(3), Papers: 29}.Under30())
	fmt.Println(maturity.Evidence{}.Under30())
	// Output:
	// true
	// false
	// true
	// false
}

func ExampleGroup() {
	fmt.Println(maturity.A, maturity.A.IsValid())
	var unset maturity.Group
	fmt.Println(unset, unset.IsValid())
	// Output:
	// A true
	// unset false
}

func ExampleGroup_At() {
	fmt.Println(maturity.A.At(60), maturity.A.At(100) == maturity.B.At(0))
	// Impossible units give a value that shows what was asked and is refused.
	s := maturity.A.At(150)
	fmt.Println(s, s.IsValid())
	// Output:
	// A60 true
	// A(150) false
}

func ExampleGroup_Months() {
	for g := range maturity.Groups() {
		from, to := g.Months()
		fmt.Println(g, "from", from, "to", to)
	}
	// Output:
	// A from 9 months to 30 months
	// B from 30 months to 42 months
	// C from 42 months to 72 months
	// D from 72 months to 96 months
	// E from 96 months to none
}

func ExampleGroups() {
	for g := range maturity.Groups() {
		fmt.Print(g, " ")
	}
	// Output:
	// A B C D E
}

func ExampleParseGroup() {
	fmt.Println(maturity.ParseGroup("C"))
	fmt.Println(maturity.ParseGroup("c"))
	// Output:
	// C <nil>
	// C <nil>
}

func ExampleScore() {
	s := maturity.A.At(70)
	fmt.Println(s, s.IsValid(), s < maturity.B.At(0))
	var unset maturity.Score
	fmt.Println(unset, unset.IsValid())
	// Output:
	// A70 true true
	// unset false
}

func ExampleScore_Group() {
	s := maturity.MustParse("C05")
	fmt.Println(s.Group(), s.Units())
	// Output:
	// C 5
}

func ExampleScore_Units() {
	fmt.Println(maturity.D.At(100).Units(), maturity.E.At(100).Units())
	// Output:
	// 0 100
}

func ExampleScore_Number() {
	// The number that research reports print.
	fmt.Println(maturity.A.At(0).Number(), maturity.B.At(50).Number(), maturity.E.At(100).Number())
	// Output:
	// 100 250 600
}

func ExampleScore_Compare() {
	scores := []maturity.Score{maturity.C.At(10), maturity.A.At(90), maturity.B.At(0)}
	slices.SortFunc(scores, maturity.Score.Compare)
	fmt.Println(scores)
	// Output:
	// [A90 B00 C10]
}

func ExampleScore_Check() {
	fmt.Println(maturity.A.At(120).Check("exhibit 3: lean maturity"))
	fmt.Println(maturity.Score(0).Check("exhibit 3: lean maturity"))
	// Output:
	// exhibit 3: lean maturity: A(120): out of range; allowed: A00 to E100
	// exhibit 3: lean maturity: missing; allowed: A00 to E100
}

func ExampleScore_Months() {
	fmt.Println(maturity.A.At(50).Months())
	fmt.Println(maturity.E.At(0).Months()) // no upper age is published
	// Output:
	// 19 months true
	// none false
}

func ExampleScore_Ossification() {
	fmt.Println(maturity.B.At(0).Ossification())
	fmt.Println(maturity.C.At(50).Ossification())
	// Output:
	// 10 true
	// 53 true
}

func ExampleParse() {
	fmt.Println(maturity.Parse("A70"))
	fmt.Println(maturity.Parse("A100"))
	fmt.Println(maturity.Parse("A7"))
	fmt.Println(maturity.Parse("F20"))
	// Output:
	// A70 <nil>
	// B00 <nil>
	// unset maturity: "A7": bad syntax at "7"; allowed: two digits after the name, A00 to E100
	// unset maturity: "F20": unknown at "F"; allowed: A00 to E100
}

func ExampleMustParse() {
	fmt.Println(maturity.MustParse("B05"))
	// Output:
	// B05
}

func ExampleMonths() {
	papers := maturity.Months(29)
	fmt.Println(papers, papers.IsValid())
	fmt.Println(maturity.Months(0), maturity.Months(0).IsValid())
	// Output:
	// 29 months true
	// none false
}

func ExampleParseMonths() {
	fmt.Println(maturity.ParseMonths("29 months"))
	fmt.Println(maturity.ParseMonths("29"))
	fmt.Println(maturity.ParseMonths("two years"))
	// Output:
	// 29 months <nil>
	// 29 months <nil>
	// none age: "two years": bad syntax; allowed: 1 to 600 months
}

func ExampleTeeth() {
	// The zero Teeth means that nobody looked, which is not a mouth without
	// permanent incisors.
	var unseen maturity.Teeth
	fmt.Println(unseen, unseen.IsValid())
	none := maturity.Incisors(0)
	fmt.Println(none, none.IsValid())
	// Output:
	// not looked at false
	// 0 permanent incisors true
}

func ExampleIncisors() {
	fmt.Println(maturity.Incisors(2))
	// An impossible count gives a value that shows what was asked and is refused.
	fmt.Println(maturity.Incisors(12), maturity.Incisors(12).IsValid())
	// Output:
	// 2 permanent incisors
	// 12 permanent incisors false
}

func ExampleTeeth_Count() {
	fmt.Println(maturity.Incisors(4).Count())
	fmt.Println(maturity.Teeth(0).Count())
	// Output:
	// 4 true
	// 0 false
}

func ExampleParseTeeth() {
	fmt.Println(maturity.ParseTeeth("2"))
	fmt.Println(maturity.ParseTeeth("2 permanent incisors"))
	fmt.Println(maturity.ParseTeeth("10"))
	// Output:
	// 2 permanent incisors <nil>
	// 2 permanent incisors <nil>
	// not looked at teeth: "10": out of range; allowed: 0 to 8
}

func ExampleTens() {
	// Bone A80 and lean A51 balance to A66, and the nearest ten is A70 in any
	// direction.
	s, err := maturity.Balancing{Tens: maturity.TensTowardLean}.Balance(maturity.A.At(80), maturity.A.At(51))
	fmt.Println(s, err)
	fmt.Println(maturity.TensTowardLean, maturity.KeepUnits)
	// Output:
	// A70 <nil>
	// toward lean keep units
}

func ExampleOldLean() {
	fmt.Println(maturity.OldLeanMayCross, maturity.OldLeanStaysInB)
	// Output:
	// may cross stays in B
}

func ExampleFromOssification() {
	for _, percent := range []int{0, 10, 35, 50, 101} {
		fmt.Println(maturity.FromOssification(percent))
	}
	// Output:
	// A00 <nil>
	// B00 <nil>
	// C00 <nil>
	// C43 <nil>
	// unset ossification: 101%: out of range; allowed: 0% to 100%
}

func ExampleOssificationPoint() {
	p := slices.Collect(maturity.OssificationPoints())[1]
	fmt.Println(p.Score, p.Percent, p.Cite)
	// Output:
	// B00 10 published: uni-grading-slides
}

func ExampleOssificationPoints() {
	for p := range maturity.OssificationPoints() {
		fmt.Printf("%v at %d%% (%v)\n", p.Score, p.Percent, p.Cite)
	}
	// Output:
	// A00 at 0% (published: uni-grading-slides)
	// B00 at 10% (published: uni-grading-slides)
	// C00 at 35% (published: uni-grading-slides)
	// D00 at 70% (from memory)
	// E00 at 90% (from memory)
	// E100 at 100% (derived)
}

func ExampleFieldError() {
	_, err := maturity.Balance(maturity.A.At(90), maturity.A.At(130))
	var fe *maturity.FieldError
	if errors.As(err, &fe) {
		fmt.Println("field:  ", fe.Field)
		fmt.Println("value:  ", fe.Value)
		fmt.Println("allowed:", fe.Allowed)
	}
	fmt.Println(errors.Is(err, maturity.ErrRange))
	// Output:
	// field:   lean maturity
	// value:   A(130)
	// allowed: A00 to E100
	// true
}

func ExampleParseError() {
	_, err := maturity.Parse("F20")
	var pe *maturity.ParseError
	if errors.As(err, &pe) {
		fmt.Println("kind:   ", pe.Kind)
		fmt.Println("input:  ", pe.Input)
		fmt.Println("part:   ", pe.Part)
		fmt.Println("allowed:", pe.Allowed)
	}
	fmt.Println(errors.Is(err, maturity.ErrUnknown))
	// Output:
	// kind:    maturity
	// input:   F20
	// part:    F
	// allowed: A00 to E100
	// true
}

func ExampleProblems() {
	err := maturity.Evidence{Skeletal: maturity.A.At(150)}.Check(true)
	for _, p := range maturity.Problems(err) {
		fmt.Println(p.Path, p)
	}
	// Output:
	// skeletal skeletal maturity: A(150): out of range; allowed: A00 to E100
	// lean lean maturity: missing; allowed: A00 to E100
}
