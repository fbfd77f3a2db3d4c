package practice_test

import (
	"errors"
	"fmt"
	"log"

	"example.com/ribface/placing/practice"
)

func ExampleMake() {
	c, err := practice.Make(7, practice.Spec{Difficulty: practice.Medium, Shape: practice.CloseMiddle, LeastGrades: 2})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(c)
	fmt.Println("key:", c.Official)
	for _, line := range c.Placing.Explain() {
		fmt.Println(line)
	}
	// Output:
	// invented class 7: no carcass of it is real
	// exhibit 1: steer, skeletal A30, lean A40, marbling Sl00, fat 0.5 in, ribeye 15.1 sq in, KPH 2.5%, weight 827 lb
	// exhibit 2: steer, skeletal A50, lean A60, marbling Sl60, fat 0.45 in, ribeye 13.7 sq in, KPH 2%, weight 824 lb
	// exhibit 3: steer, skeletal A60, lean A50, marbling Sl80, fat 0.6 in, ribeye 13.3 sq in, KPH 2.5%, weight 834 lb
	// exhibit 4: steer, skeletal A70, lean A60, marbling Sm70, fat 0.65 in, ribeye 12.2 sq in, KPH 2%, weight 844 lb
	// key: 4-3-2-1 cuts 5-1-4
	// 4 over 3 by quality tier, 1 tier better in quality, yield higher by 0.415; margin 1.085.
	// 3 over 2 by marbling, of one tier, yield higher by 0.641; margin 0.3.
	// 2 over 1 by marbling, of one tier, yield higher by 0.2116; margin 0.9.
}

func ExampleClass() {
	c, err := practice.Make(7, practice.Spec{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Name())
	fmt.Print(c.String())
	fmt.Println(c.Key().Order, c.Key().Cuts)
	for _, f := range c.Facts() {
		fmt.Println(f.Exhibit, f.Facts.Quality.Value, f.Facts.Yield.Value)
	}
	// Output:
	// invented class 7
	// invented class 7: no carcass of it is real
	// exhibit 1: steer, skeletal A40, lean A40, marbling Mt40, fat 0.35 in, ribeye 14.7 sq in, KPH 1.5%, weight 840 lb
	// exhibit 2: steer, skeletal A70, lean A30, marbling Md00, fat 0.6 in, ribeye 12.5 sq in, KPH 1.5%, weight 810 lb
	// exhibit 3: steer, skeletal A40, lean A50, marbling Sm30, fat 0.4 in, ribeye 14.3 sq in, KPH 2%, weight 837 lb
	// exhibit 4: steer, skeletal A40, lean A30, marbling Sm70, fat 0.6 in, ribeye 11.8 sq in, KPH 2%, weight 845 lb
	// 2-1-4-3 1-7-1
	// 1 Average Choice 2.163
	// 2 High Choice 3.378
	// 3 Low Choice 2.5046
	// 4 Low Choice 3.835
}

func ExampleSpec() {
	_, err := practice.Make(7, practice.Spec{Exhibits: 13})
	fmt.Println(err)
	_, err = practice.Make(7, practice.Spec{Difficulty: practice.Hard, LeastCut: 8})
	fmt.Println(err)
	// Output:
	// exhibits: 13: out of range; allowed: 2 to 12
	// spec: seed 7: out of range; allowed: a class that 20,000 draws can give
}

func ExampleHerd() {
	h := practice.Herds()[3]
	fmt.Println(h.Name, h.Fat, h.Ribeye, h.KPH, h.Weight, h.Marbling)
	fmt.Println(h.Means)
	fmt.Println(h.Spreads)
	fmt.Println(h.Correlations)
	// Output:
	// fed cattle 2016, by instrument 0.5394 in 13.7795 sq in 2.1% 867.7395 lb Sm75
	// published: nbqa-2016-instrument
	// published: jas-2020-skaa287
	// derived: marbling-trial-2010
}

func ExampleHerds() {
	for _, h := range practice.Herds() {
		fmt.Println(h.Name)
	}
	// Output:
	// marbling trial 2010
	// fed cattle 2011, in plant
	// fed cattle 2016, in plant
	// fed cattle 2016, by instrument
}

func ExampleDifficulty() {
	for d := practice.Hard; d <= practice.Easy; d++ {
		c, err := practice.Make(1, practice.Spec{Difficulty: d})
		fmt.Println(d, c.Official.Cuts(), err)
	}
	// Output:
	// hard 6-1-1 <nil>
	// medium 5-2-3 <nil>
	// easy 4-5-4 <nil>
}

func ExampleShape() {
	for s := practice.CloseMiddle; s <= practice.ClearSteps; s++ {
		c, err := practice.Make(8, practice.Spec{Shape: s})
		fmt.Println(s, c.Official.Cuts(), err)
	}
	// Output:
	// close middle 5-1-5 <nil>
	// close pairs 1-6-5 <nil>
	// clear steps 4-5-5 <nil>
}

func ExampleFieldError() {
	_, err := practice.Make(7, practice.Spec{Spread: 500})
	var fe *practice.FieldError
	fmt.Println(errors.As(err, &fe), fe.Field, fe.Allowed, errors.Is(err, practice.ErrRange))
	// Output:
	// true spread 1 to 400 true
}

func ExampleParseError() {
	_, err := practice.ParseShape("round")
	var pe *practice.ParseError
	fmt.Println(errors.As(err, &pe), pe.Kind, pe.Input, errors.Is(err, practice.ErrUnknown))
	// Output:
	// true shape round true
}
