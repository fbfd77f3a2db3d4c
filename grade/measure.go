package grade

import "github.com/shopspring/decimal"

// Thickness is a thickness of fat in units of 0.0001 inch. It may be negative,
// as an adjustment can be; a measured thickness may not. The zero Thickness was
// not taken.
type Thickness struct{ measurement[thicknessKind] }

// Area is an area of ribeye in units of 0.0001 square inch. The zero Area was not
// taken.
type Area struct{ measurement[areaKind] }

// Share is a share of the carcass weight in units of 0.0001 percent. The zero
// Share was not taken.
type Share struct{ measurement[shareKind] }

// Weight is a weight in units of 0.0001 pound. The zero Weight was not taken.
type Weight struct{ measurement[weightKind] }

func thickness(n uint32) Thickness { return Thickness{measurement[thicknessKind]{n}} }
func area(n uint32) Area           { return Area{measurement[areaKind]{n}} }
func share(n uint32) Share         { return Share{measurement[shareKind]{n}} }
func weight(n uint32) Weight       { return Weight{measurement[weightKind]{n}} }

// Inches returns a thickness of so many inches, to the nearest 0.0001 in, once.
// NaN, infinities and numbers that do not fit give an invalid Thickness that every
// computation refuses by field name.
func Inches(f float64) Thickness { return thickness(thicknesses.fromFloat(0, f)) }

// Millimeters returns a thickness of so many millimeters, to the nearest 0.0001 in,
// once, halves away from zero: what the shortest decimal text of the float gives.
// See [Inches] for what does not fit.
func Millimeters(f float64) Thickness { return thickness(thicknesses.fromFloat(1, f)) }

// ThicknessUnits returns a thickness of n times 0.0001 in.
func ThicknessUnits(n int64) Thickness { return thickness(kept(n)) }

// MillimetersDecimal returns a thickness of d millimeters to the nearest 0.0001 in,
// halves away from zero.
func MillimetersDecimal(d decimal.Decimal) (Thickness, error) {
	n, err := thicknesses.fromDecimal(1, d)
	return thickness(n), err
}

// ParseThickness reads a number and a unit, in, mm or cm, with or without blanks
// between, as "0.45 in", ".45" or "11mm". A bare number is in inches. More than 4
// places of an inch are refused with [ErrPlaces], or rounded the way that is named;
// metric text of any places goes to the nearest 0.0001 in, halves away from zero. No
// grouping is read.
func ParseThickness(s string, surplus ...Rounding) (Thickness, error) {
	n, err := thicknesses.parseAs(s, surplus)
	return thickness(n), err
}

// Inches returns the thickness in inches, exactly; 0 for a value without a number.
func (t Thickness) Inches() decimal.Decimal { return metric(t.n, 0, 1) }

// Millimeters returns the thickness in millimeters, exactly; 0 for a value without a
// number.
func (t Thickness) Millimeters() decimal.Decimal { return metric(t.n, 1, 254) }

// Compare returns -1, 0 or +1 as t is less than, equal to or more than u. One that
// was not taken comes first.
func (t Thickness) Compare(u Thickness) int { return compare(t.measurement, u.measurement) }

// Equal reports whether t == u.
func (t Thickness) Equal(u Thickness) bool { return t == u }

// SquareInches returns an area of so many square inches. See [Inches].
func SquareInches(f float64) Area { return area(areas.fromFloat(0, f)) }

// SquareCentimeters returns an area of so many square centimeters, to the nearest
// 0.0001 square inch, once. See [Millimeters].
func SquareCentimeters(f float64) Area { return area(areas.fromFloat(1, f)) }

// AreaUnits returns an area of n times 0.0001 square inch.
func AreaUnits(n int64) Area { return area(kept(n)) }

// SquareCentimetersDecimal returns an area of d square centimeters to the nearest
// 0.0001 square inch, halves away from zero.
func SquareCentimetersDecimal(d decimal.Decimal) (Area, error) {
	n, err := areas.fromDecimal(1, d)
	return area(n), err
}

// ParseArea reads a number and a unit, sq in or sq cm, as "12.4 sq in". A bare
// number is in square inches. See [ParseThickness].
func ParseArea(s string, surplus ...Rounding) (Area, error) {
	n, err := areas.parseAs(s, surplus)
	return area(n), err
}

// SquareInches returns the area in square inches, exactly; 0 for a value without a
// number.
func (a Area) SquareInches() decimal.Decimal { return metric(a.n, 0, 1) }

// SquareCentimeters returns the area in square centimeters, exactly; 0 for a value
// without a number.
func (a Area) SquareCentimeters() decimal.Decimal { return metric(a.n, 4, 64_516) }

// Compare returns -1, 0 or +1 as a is less than, equal to or more than b. One that
// was not taken comes first.
func (a Area) Compare(b Area) int { return compare(a.measurement, b.measurement) }

// Equal reports whether a == b.
func (a Area) Equal(b Area) bool { return a == b }

// Percent returns a share of so many percent of carcass weight. See [Inches].
func Percent(f float64) Share { return share(shares.fromFloat(0, f)) }

// ShareUnits returns a share of n times 0.0001 percent.
func ShareUnits(n int64) Share { return share(kept(n)) }

// ParseShare reads a number with or without a percent sign, as "2.5%". See
// [ParseThickness].
func ParseShare(s string, surplus ...Rounding) (Share, error) {
	n, err := shares.parseAs(s, surplus)
	return share(n), err
}

// Percent returns the share in percent, exactly; 0 for a value without a number.
func (p Share) Percent() decimal.Decimal { return metric(p.n, 0, 1) }

// Compare returns -1, 0 or +1 as p is less than, equal to or more than q. One that
// was not taken comes first.
func (p Share) Compare(q Share) int { return compare(p.measurement, q.measurement) }

// Equal reports whether p == q.
func (p Share) Equal(q Share) bool { return p == q }

// Pounds returns a weight of so many pounds. See [Inches].
func Pounds(f float64) Weight { return weight(weights.fromFloat(0, f)) }

// Kilograms returns a weight of so many kilograms, to the nearest 0.0001 lb, once.
// See [Millimeters].
func Kilograms(f float64) Weight { return weight(weights.fromFloat(1, f)) }

// WeightUnits returns a weight of n times 0.0001 lb.
func WeightUnits(n int64) Weight { return weight(kept(n)) }

// KilogramsDecimal returns a weight of d kilograms to the nearest 0.0001 lb, halves
// away from zero.
func KilogramsDecimal(d decimal.Decimal) (Weight, error) {
	n, err := weights.fromDecimal(1, d)
	return weight(n), err
}

// ParseWeight reads a number and a unit, lb or kg, as "842 lb". A bare number is in
// pounds. See [ParseThickness].
func ParseWeight(s string, surplus ...Rounding) (Weight, error) {
	n, err := weights.parseAs(s, surplus)
	return weight(n), err
}

// Pounds returns the weight in pounds, exactly; 0 for a value without a number.
func (w Weight) Pounds() decimal.Decimal { return metric(w.n, 0, 1) }

// Kilograms returns the weight in kilograms, exactly; 0 for a value without a
// number.
func (w Weight) Kilograms() decimal.Decimal { return metric(w.n, 8, 45_359_237) }

// Compare returns -1, 0 or +1 as w is less than, equal to or more than v. One that
// was not taken comes first.
func (w Weight) Compare(v Weight) int { return compare(w.measurement, v.measurement) }

// Equal reports whether w == v.
func (w Weight) Equal(v Weight) bool { return w == v }
