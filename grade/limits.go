package grade

// The measures that are taken for a carcass, both ends allowed, in 0.0001 of the
// unit. The upper ends hold the published extremes of the audits (derived:
// nbqa-2016-cows); the lower ends keep out a value in another unit or with a
// slipped point (our own choice: no beef carcass weighs under 100 lb, none has a
// ribeye under 1 sq in). Every other place of the module reads the limits here.
const (
	minFat, maxFat       = 0, 3 * unitOf
	minRibeye, maxRibeye = 1 * unitOf, 25 * unitOf
	minKPH, maxKPH       = 0, 10 * unitOf
	minWeight, maxWeight = 100 * unitOf, 1800 * unitOf
)

// unitOf is how many 0.0001 there are in one of any unit of measurement.
const unitOf = 10_000

// Limits are the ends, both allowed, of what is taken for a measure of a carcass.
type Limits struct {
	Least Measures `json:"least"`
	Most  Measures `json:"most"`
}

// CarcassLimits returns the limits of the four measures: fat 0 to 3 in, ribeye 1 to
// 25 sq in, KPH 0 to 10 percent, hot carcass weight 100 to 1,800 lb.
func CarcassLimits() Limits {
	return Limits{
		Least: Measures{ThicknessUnits(minFat), AreaUnits(minRibeye), ShareUnits(minKPH), WeightUnits(minWeight)},
		Most:  Measures{ThicknessUnits(maxFat), AreaUnits(maxRibeye), ShareUnits(maxKPH), WeightUnits(maxWeight)},
	}
}

// usual is the range in which fed cattle are met, see [Measures.Unusual].
var usual = Limits{
	Least: Measures{ThicknessUnits(0), AreaUnits(6 * unitOf), ShareUnits(0), WeightUnits(400 * unitOf)},
	Most:  Measures{ThicknessUnits(2 * unitOf), AreaUnits(22 * unitOf), ShareUnits(6 * unitOf), WeightUnits(1300 * unitOf)},
}

// Unusual returns a note for every measure that is possible and yet outside the
// range in which fed cattle are met: fat over 2 in, ribeye under 6 or over 22 sq
// in, KPH over 6%, weight under 400 or over 1,300 lb (derived from the published
// ranges of the audits). It returns nil for usual measures; one that was not taken
// has no note.
func (m Measures) Unusual() []string {
	var notes []string
	note := func(q *quantity, name string, n, lo, hi uint32) {
		if n != 0 && (n < lo || n > hi) {
			notes = append(notes, name+" "+q.string(n)+" is outside the usual "+q.string(lo)+" to "+q.string(hi))
		}
	}
	lo, hi := usual.Least, usual.Most
	note(&thicknesses, "fat", m.Fat.n, lo.Fat.n, hi.Fat.n)
	note(&areas, "ribeye", m.Ribeye.n, lo.Ribeye.n, hi.Ribeye.n)
	note(&shares, "KPH", m.KPH.n, lo.KPH.n, hi.KPH.n)
	note(&weights, "weight", m.Weight.n, lo.Weight.n, hi.Weight.n)
	return notes
}
