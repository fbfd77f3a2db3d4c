package class

import (
	"fmt"
	"strings"

	"example.com/ribface/grade"
)

// The words of reasons. Published (uni-beef-judging-slides) are: for trimness
// ribeye, lower rib, round, loin edge, brisket, cod or udder, and kidney, pelvic
// and heart fat; for muscling ribeye, round and rib; for quality marbling, color,
// texture and firmness. Inside round, rump, hip, flank, plate, clod, shoulder and
// neck are sites that the federal text names (official: cfr-1965-53-p26). From
// memory are: loin and clod as places of muscling, bone and buttons, and every
// word of comparison, as plumper, thicker, meatier, trimmer, firmer, finer
// textured, brighter colored, and fat opposite the ribeye.

// traitTerm says of a trait what it belongs to, what the better of two has, and the
// least differences that are slight, plain and wide to the eye, our own choice: quality
// grades without their parts, maturity groups, points of marbling, terms of the lean,
// places over a site, and units of 0.0001 of an inch, square inch and percent, and of
// 0.00000001 of a yield grade.
type traitTerm struct {
	on     Heading
	better string
	seen   []int64
}

var traitTerms = map[grade.Trait]traitTerm{
	grade.TraitQuality:  {OnQuality, "a higher quality grade", []int64{0, 1, 2}},
	grade.TraitDark:     {OnQuality, "lean that cuts less dark", []int64{1, 1, 2}},
	grade.TraitMarbling: {OnQuality, "more marbling", []int64{10, 40, 150}},
	grade.TraitYield:    {OnCutability, "a lower yield grade", []int64{15_000_000, 50_000_000, 150_000_000}},
	grade.TraitFat:      {OnTrimness, "less fat over the rib", []int64{500, 1_000, 3_000}},
	grade.TraitRibeye:   {OnMuscling, "a larger ribeye", []int64{4_000, 8_000, 25_000}},
	grade.TraitKPH:      {OnTrimness, "less kidney, pelvic and heart fat", []int64{5_000, 10_000, 20_000}},
	grade.TraitWeight:   {OnCutability, "a lighter weight by the yield equation", nil},
	grade.TraitSkeletal: {OnQuality, "younger bone", []int64{1, 1, 2}},
	grade.TraitButtons:  {OnQuality, "softer, whiter buttons", []int64{1, 1, 2}},
	grade.TraitLean:     {OnQuality, "younger lean", []int64{1, 1, 2}},
	grade.TraitColor:    {OnQuality, "brighter colored lean", []int64{1, 1, 3}},
	grade.TraitTexture:  {OnQuality, "finer textured lean", []int64{1, 1, 3}},
	grade.TraitFirmness: {OnQuality, "firmer lean", []int64{1, 1, 3}},
	grade.TraitSite:     {seen: []int64{1, 1, 100}},
}

// siteTerm are the words for a site.
type siteTerm struct {
	noun   string
	in     bool   // fat is in it, not over it
	worst  string // what the worst of a class has there, for muscling
	better string // what the better of two has there
}

var siteTerms = [...]siteTerm{
	FatRound:       {noun: "round", better: "less fat over the round"},
	FatInsideRound: {noun: "inside round", better: "less fat over the inside round"},
	FatRump:        {noun: "rump", better: "less fat over the rump"},
	FatHip:         {noun: "hip", better: "less fat over the hip"},
	FatCod:         {noun: "cod or udder", in: true, better: "less fat in the cod or udder"},
	FatFlank:       {noun: "flank", in: true, better: "less fat in the flank"},
	FatLoinEdge:    {noun: "loin edge", better: "less fat over the loin edge"},
	FatRib:         {noun: "lower rib", better: "less fat over the lower rib"},
	FatPlate:       {noun: "plate", better: "less fat over the plate"},
	FatClod:        {noun: "clod", better: "less fat over the clod"},
	FatShoulder:    {noun: "shoulder", better: "less fat over the shoulder"},
	FatNeck:        {noun: "neck", better: "less fat over the neck"},
	FatBrisket:     {noun: "brisket", in: true, better: "less fat in the brisket"},
	RoundPlumpness: {noun: "round", better: "a plumper round", worst: "flattest"},
	RoundLength:    {noun: "round", better: "a longer round", worst: "shortest"},
	RoundWidth:     {noun: "round", better: "a wider round", worst: "narrowest"},
	RoundCushion:   {noun: "round", better: "a fuller round", worst: "least full"},
	MuscleLoin:     {noun: "loin", better: "a thicker loin", worst: "thinnest"},
	MuscleRib:      {noun: "rib", better: "a thicker rib", worst: "thinnest"},
	MuscleClod:     {noun: "clod", better: "a meatier clod", worst: "thinnest"},
}

// termOf returns the words for a site; its name alone for one that is none.
func termOf(s Site) siteTerm {
	if !s.IsValid() {
		return siteTerm{noun: s.String(), worst: "poorest"}
	}
	return siteTerms[s]
}

// noun names a site; with the sex known, the cod of a steer or the udder of a
// heifer.
func noun(s Site, sex grade.Sex) string {
	switch {
	case s == FatCod && (sex == grade.Steer || sex == grade.Bullock || sex == grade.Bull):
		return "cod"
	case s == FatCod && (sex == grade.Heifer || sex == grade.Cow):
		return "udder"
	default:
		return termOf(s).noun
	}
}

// where names sites together, as "over the rump and loin edge and in the
// brisket", or "through the round and loin" for muscling.
func where(sites []Site, sex grade.Sex) string {
	var over, in, through []string
	for _, s := range sites {
		list := &through
		switch {
		case s.Fat() && termOf(s).in:
			list = &in
		case s.Fat():
			list = &over
		}
		if n := noun(s, sex); len(*list) == 0 || (*list)[len(*list)-1] != n {
			*list = append(*list, n)
		}
	}
	var parts []string
	for i, names := range [...][]string{over, in, through} {
		if names != nil {
			parts = append(parts, [...]string{"over", "in", "through"}[i]+" the "+series(names))
		}
	}
	return series(parts)
}

// series joins words as a person says them: "a", "a and b", "a, b and c".
func series(words []string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
}

// named joins the names of values.
func named[T fmt.Stringer](all []T, between string) string {
	names := make([]string, len(all))
	for i, v := range all {
		names[i] = v.String()
	}
	return strings.Join(names, between)
}

// sayQuality puts a quality as a person says it: "high Choice", "Standard", or
// "no grade".
func sayQuality(q grade.Quality) string {
	switch {
	case q.Grade() == grade.NoGrade:
		return "no grade"
	case q.Part() == grade.Whole:
		return q.Grade().String()
	default:
		return strings.ToLower(q.Part().String()) + " " + q.Grade().String()
	}
}
