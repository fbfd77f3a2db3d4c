package maturity

import (
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Tens says what becomes of the units of a balanced score.
type Tens uint8

// What can become of the units. No source settles the rounding of a result that
// ends in 5; toward bone is from memory, and weak.
const (
	KeepUnits      Tens = iota // units stay as they come out (the default)
	TensTowardBone             // to the nearest ten, fives toward the skeletal score
	TensTowardLean             // to the nearest ten, fives toward the lean score
)

// OldLean says what becomes of a carcass with bone in B and lean so much older
// that the arithmetic would carry the overall score into C. No source settles
// it.
type OldLean uint8

// The two answers. The default follows the arithmetic, because the only federal
// limit that applies is the one full group from bone.
const (
	OldLeanMayCross OldLean = iota // the overall score may come out in C (the default)
	OldLeanStaysInB                // the overall score is held at B99
)

// Rules are the choices in balancing that no source settles. The zero Rules are
// the defaults.
type Rules struct {
	Tens    Tens    `json:"tens,omitzero"`
	OldLean OldLean `json:"old_lean,omitzero"`
}

var (
	tens     = text.Enum{Kind: "tens", Names: []string{"", "toward bone", "toward lean"}, Zero: "keep units"}
	oldLeans = text.Enum{Kind: "old lean", Names: []string{"", "stays in B"}, Zero: "may cross"}
)

// IsValid reports whether t is one of the named choices; the zero value is.
func (t Tens) IsValid() bool { return t <= TensTowardLean }

// String gives the name; "keep units" for zero.
func (t Tens) String() string { return tens.String(int(t)) }

// ParseTens reads the name of a choice, as [Tens.String] writes it.
func ParseTens(s string) (Tens, error) {
	v, err := tens.Parse(s)
	return Tens(v), err
}

// AppendText appends the name; the zero value is empty text.
func (t Tens) AppendText(b []byte) ([]byte, error) { return tens.Append(b, int(t)) }

// MarshalText gives the name; the zero value is empty text.
func (t Tens) MarshalText() ([]byte, error) { return t.AppendText(nil) }

// UnmarshalText reads a name; empty text gives the zero value. On error the
// receiver is left as it was.
func (t *Tens) UnmarshalText(b []byte) error { return text.Unmarshal(t, b, ParseTens) }

// IsValid reports whether o is one of the two answers; the zero value is.
func (o OldLean) IsValid() bool { return o <= OldLeanStaysInB }

// String gives the name; "may cross" for zero.
func (o OldLean) String() string { return oldLeans.String(int(o)) }

// ParseOldLean reads the name of an answer, as [OldLean.String] writes it.
func ParseOldLean(s string) (OldLean, error) {
	v, err := oldLeans.Parse(s)
	return OldLean(v), err
}

// AppendText appends the name; the zero value is empty text.
func (o OldLean) AppendText(b []byte) ([]byte, error) { return oldLeans.Append(b, int(o)) }

// MarshalText gives the name; the zero value is empty text.
func (o OldLean) MarshalText() ([]byte, error) { return o.AppendText(nil) }

// UnmarshalText reads a name; empty text gives the zero value. On error the
// receiver is left as it was.
func (o *OldLean) UnmarshalText(b []byte) error { return text.Unmarshal(o, b, ParseOldLean) }

// wider marks a gap between bone and lean over which the mean moves toward bone,
// shift is by how much, and hardBone is the skeletal score from which the
// overall score stays out of the young groups.
const (
	wider    = 40
	shift    = 10
	group    = 100
	hardBone = Score(300 + 15)
	firstC   = Score(300)
)

// The ground under each rule of balancing.
var (
	citeMean     = cite.Citation{Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"}
	citeGroup    = cite.Citation{Standing: cite.Official, IDs: "ams-maturity-slides cfr-1965-53-general"}
	citeHardBone = cite.Citation{Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"}
	citeOpen     = cite.Citation{Standing: cite.Derived}
	citeFives    = cite.Citation{Standing: cite.Memory}
)

// Balance combines skeletal and lean maturity into overall maturity with the
// default [Rules].
//
// The federal rule has no arithmetic: bone gets slightly more weight, and the
// overall score is never more than one full group from bone (official:
// ams-maturity-slides, cfr-1965-53-general). The arithmetic is the one taught to
// judges (common practice: quiz-quality-concepts): the mean when the two are 40
// units apart or less, the mean moved 10 units toward bone when they are
// farther apart; then held to within 100 units of bone; then, with bone C15 or
// older, held at C00 or older. A mean that falls between two units goes to the
// one nearer to bone (derived).
//
// An unset or invalid score gives a [*FieldError] for "skeletal maturity" or
// "lean maturity".
func Balance(skeletal, lean Score) (Score, error) { return Rules{}.Balance(skeletal, lean) }

// Balance is the function [Balance] under these rules.
func (r Rules) Balance(skeletal, lean Score) (Score, error) {
	if !skeletal.IsValid() || !lean.IsValid() || !r.Tens.IsValid() || !r.OldLean.IsValid() {
		return 0, r.check(skeletal, lean)
	}
	return r.balance(skeletal, lean), nil
}

func (r Rules) check(skeletal, lean Score) error {
	return fault.Join(fault.At("skeletal", "", skeletal.Check("skeletal maturity")), fault.At("lean", "", lean.Check("lean maturity")), r.Check())
}

// Check returns an error that tells of every rule that is not one of the named
// choices; nil when there is none.
func (r Rules) Check() error {
	var all [2]error
	if !r.Tens.IsValid() {
		all[0] = &FieldError{Path: "tens", Field: "rules: tens", Value: r.Tens.String(), Allowed: tens.Allowed(), Err: ErrUnknown}
	}
	if !r.OldLean.IsValid() {
		all[1] = &FieldError{Path: "old_lean", Field: "rules: old lean", Value: r.OldLean.String(), Allowed: oldLeans.Allowed(), Err: ErrUnknown}
	}
	return fault.Join(all[:]...)
}

func (r Rules) balance(bone, lean Score) Score {
	s := mean(bone, lean)
	if gap := bone - lean; gap > wider {
		s += shift
	} else if gap < -wider {
		s -= shift
	}
	switch r.Tens {
	case TensTowardBone:
		s = nearestTen(s, bone)
	case TensTowardLean:
		s = nearestTen(s, lean)
	}
	s = min(max(s, bone-group), bone+group)
	if bone >= hardBone && s < firstC {
		s = firstC
	}
	if r.OldLean == OldLeanStaysInB && bone < firstC && s >= firstC {
		s = firstC - 1
	}
	return s
}

// mean is the middle of the two, a half unit going to bone.
func mean(bone, lean Score) Score {
	if (bone+lean)%2 != 0 && bone > lean {
		return (bone + lean + 1) / 2
	}
	return (bone + lean) / 2
}

// nearestTen rounds s to a ten, a five going toward the score to.
func nearestTen(s, to Score) Score {
	switch r := s % 10; {
	case r < 5, r == 5 && to < s:
		return s - r
	default:
		return s - r + 10
	}
}

// balanceSteps explains what balance did.
func (r Rules) balanceSteps(bone, lean Score) []cite.Step {
	given := "skeletal " + bone.String() + ", lean " + lean.String()
	gap := max(bone-lean, lean-bone)
	s := mean(bone, lean)
	rule := "skeletal and lean at most 40 units apart: their mean"
	if gap > wider {
		if bone > lean {
			s += shift
		} else {
			s -= shift
		}
		rule = "skeletal and lean more than 40 units apart: their mean, then 10 units toward skeletal"
	}
	steps := []cite.Step{{Name: "overall maturity", Rule: rule, Given: given, Result: s.String(), Cite: citeMean}}
	add := func(to Score, rule string, c cite.Citation) {
		if to != s {
			steps = append(steps, cite.Step{Name: "overall maturity", Rule: rule, Given: s.String() + " with skeletal " + bone.String(), Result: to.String(), Cite: c})
			s = to
		}
	}
	switch r.Tens {
	case TensTowardBone:
		add(nearestTen(s, bone), "to the nearest ten units, fives toward skeletal", citeFives)
	case TensTowardLean:
		add(nearestTen(s, lean), "to the nearest ten units, fives toward lean", citeOpen)
	}
	add(min(max(s, bone-group), bone+group), "never more than one full group from skeletal", citeGroup)
	if bone >= hardBone {
		add(max(s, firstC), "skeletal C15 or older: not younger than C00", citeHardBone)
	}
	if r.OldLean == OldLeanStaysInB && bone < firstC {
		add(min(s, firstC-1), "skeletal in B: older lean does not carry it into C, by the caller's choice", citeOpen)
	}
	return steps
}
