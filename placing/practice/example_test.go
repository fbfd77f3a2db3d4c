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
	// exhibit 1: steer, skeletal A60, lean A70, marbling Sl70, fat 0.5 in, ribeye 11.8 sq in, KPH 1.5%, weight 928 lb
	// exhibit 2: steer, skeletal A30, lean A70, marbling Sm70, fat 0.4 in, ribeye 13.6 sq in, KPH 2.5%, weight 961 lb
	// exhibit 3: steer, skeletal A50, lean A40, marbling Sm50, fat 0.55 in, ribeye 14.2 sq in, KPH 2%, weight 962 lb
	// exhibit 4: steer, skeletal A50, lean A40, marbling Sm70, fat 0.3 in, ribeye 14 sq in, KPH 1.5%, weight 956 lb
	// key: 4-2-3-1 cuts 3-1-5
	// 4 over 2 by yield, of one tier, yield lower by 0.597; margin 0.597.
	// 2 over 3 by marbling, of one tier, yield lower by 0.0868; margin 0.1868, close.
	// 3 over 1 by quality tier, 1 tier better in quality, yield lower by 0.4138; margin 1.0138.
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
	// exhibit 1: steer, skeletal A50, lean A30, marbling Tr50, fat 0.45 in, ribeye 12.6 sq in, KPH 2.5%, weight 867 lb
	// exhibit 2: steer, skeletal A30, lean A30, marbling Md20, fat 0.35 in, ribeye 14.2 sq in, KPH 2%, weight 898 lb
	// exhibit 3: steer, skeletal A50, lean A30, marbling Mt70, fat 0.45 in, ribeye 13.4 sq in, KPH 1.5%, weight 877 lb
	// exhibit 4: steer, skeletal A60, lean A30, marbling Sm70, fat 0.35 in, ribeye 13.7 sq in, KPH 2%, weight 899 lb
	// 2-3-4-1 1-4-8
	// 1 High Standard 3.3876
	// 2 High Choice 2.6434
	// 3 Average Choice 2.9696
	// 4 Low Choice 2.8072
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
	h := practice.Herds()[2]
	fmt.Println(h.Name, h.Fat, h.Ribeye, h.KPH, h.Weight, h.Marbling)
	fmt.Println(h.Means)
	fmt.Println(h.Spreads)
	// Output:
	// fed cattle 2016, by instrument 0.5394 in 13.7795 sq in 2.1% 867.7395 lb Sm75
	// published: nbqa-2016-instrument
	// published: jas-2020-skaa287
}

func ExampleHerds() {
	for _, h := range practice.Herds() {
		fmt.Println(h.Name)
	}
	// Output:
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
	// hard 3-1-4 <nil>
	// medium 1-3-8 <nil>
	// easy 6-3-5 <nil>
}

func ExampleShape() {
	for s := practice.CloseMiddle; s <= practice.ClearSteps; s++ {
		c, err := practice.Make(8, practice.Spec{Shape: s})
		fmt.Println(s, c.Official.Cuts(), err)
	}
	// Output:
	// close middle 4-1-3 <nil>
	// close pairs 1-6-5 <nil>
	// clear steps 4-4-3 <nil>
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
