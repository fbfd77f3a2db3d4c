package practice_test

import (
	"errors"
	"fmt"
	"log"

	"example.com/ribface/placing"
	"example.com/ribface/placing/practice"
)

func ExampleMake() {
	c, err := practice.Make(7, practice.Spec{Difficulty: practice.Medium, Shape: practice.CloseMiddle, LeastGrades: 2})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(c)
	fmt.Println("key:", c.Official)
	fmt.Println(c.Placing)
	// Output:
	// invented class 7: no carcass of it is real
	// exhibit 1: steer, skeletal A70, lean A70, marbling Mt90, fat 0.65 in, ribeye 13.4 sq in, KPH 2.5%, weight 898 lb
	// exhibit 2: steer, skeletal A60, lean A50, marbling Md70, fat 0.6 in, ribeye 13.9 sq in, KPH 2.5%, weight 886 lb
	// exhibit 3: steer, skeletal A60, lean A30, marbling Sl70, fat 0.7 in, ribeye 13.3 sq in, KPH 2%, weight 881 lb
	// exhibit 4: steer, skeletal A40, lean A60, marbling Mt70, fat 0.65 in, ribeye 12.8 sq in, KPH 2%, weight 874 lb
	// key: 2-1-4-3 cuts 3-1-6
	// 2 over 1 by marbling, of one tier, yield lower by 0.3306; margin 0.7306.
	// 1 over 4 by marbling, of one tier, yield lower by 0.0008; margin 0.1008, close.
	// 4 over 3 by quality tier, 2 tiers better in quality, yield higher by 0.0084; margin 1.9916.
}

func ExampleInvented() {
	c, err := practice.Make(7, practice.Spec{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Name())
	fmt.Print(c.String())
	fmt.Println(c.Key().Order, c.Key().Cuts)
	for _, f := range c.Facts() {
		fmt.Println(f.Exhibit, f.Facts.Quality, f.Facts.Yield)
	}
	// Output:
	// invented class 7
	// invented class 7: no carcass of it is real
	// exhibit 1: steer, skeletal A50, lean A30, marbling Sm60, fat 0.35 in, ribeye 14.5 sq in, KPH 1.5%, weight 867 lb
	// exhibit 2: steer, skeletal A30, lean A30, marbling Mt70, fat 0.65 in, ribeye 11.7 sq in, KPH 2.5%, weight 898 lb
	// exhibit 3: steer, skeletal A50, lean A30, marbling Sl90, fat 0.6 in, ribeye 12.8 sq in, KPH 2%, weight 877 lb
	// exhibit 4: steer, skeletal A60, lean A30, marbling Mt20, fat 0.55 in, ribeye 12.7 sq in, KPH 2%, weight 899 lb
	// 4-1-2-3 1-2-6
	// 1 Low Choice 2.3296
	// 2 Average Choice 4.2934
	// 3 High Select 3.6366
	// 4 Average Choice 3.6272
}

func ExampleSpec() {
	_, err := practice.Make(7, practice.Spec{Exhibits: 13})
	fmt.Println(err)
	_, err = practice.Make(7, practice.Spec{Difficulty: practice.Hard, LeastCut: 8})
	fmt.Println(err)
	// Output:
	// exhibits: 13: out of range; allowed: 2 to 12
	// least cut: 8 in a class of 4, hard: out of range; allowed: one that the size, the difficulty and the shape of the class leave room for
}

func ExampleHerd() {
	h := herds()[3]
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
	for h := range practice.Herds() {
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
	// hard 4-1-1 <nil>
	// medium 5-3-2 <nil>
	// easy 4-8-1 <nil>
}

func ExampleShape() {
	for s := practice.CloseMiddle; s <= practice.ClearSteps; s++ {
		c, err := practice.Make(8, practice.Spec{Shape: s})
		fmt.Println(s, c.Official.Cuts(), err)
	}
	// Output:
	// close middle 4-2-4 <nil>
	// close pairs 2-7-2 <nil>
	// clear steps 2-3-2 <nil>
}

func ExampleFieldError() {
	_, err := practice.Make(7, practice.Spec{Spread: 500})
	var fe *placing.FieldError
	fmt.Println(errors.As(err, &fe), fe.Field, fe.Allowed, errors.Is(err, placing.ErrRange))
	// Output:
	// true spread 1 to 400 true
}

func ExampleParseError() {
	err := new(practice.Shape).UnmarshalText([]byte("round"))
	var pe *placing.ParseError
	fmt.Println(errors.As(err, &pe), pe.Kind, pe.Input, errors.Is(err, placing.ErrUnknown))
	// Output:
	// true shape round true
}
