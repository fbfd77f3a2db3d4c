package maturity

import (
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Tens says what becomes of the units of a balanced score.
type Tens uint8

// What can become of the units; [Balance] says how tens are found. No source
// settles the rounding of a result that ends in 5; toward bone is from memory, and
// weak.
const (
	KeepUnits      Tens = iota // units stay as they come out (the default)
	TensTowardBone             // to a ten, fives toward the skeletal score
	TensTowardLean             // to a ten, fives toward the lean score
)

// OldLean says what becomes of a carcass with bone in B and lean so much older
// that the arithmetic would carry the overall score into C. No source settles
// it.
type OldLean uint8

// The two answers. The default follows the arithmetic, because the only federal
// limit that applies is the one full group from bone.
const (
	OldLeanMayCross OldLean = iota // the overall score may come out in C (the default)
	OldLeanStaysInB                // the overall score is held at B99, which to tens is B90
)

// Balancing holds the choices in balancing that no source settles. The zero Balancing has
// the defaults.
type Balancing struct {
	Tens    Tens    `json:"tens,omitzero"`
	OldLean OldLean `json:"old_lean,omitzero"`
}

var (
	tens     = text.Enum[Tens]{Kind: "tens", Names: []string{"", "toward bone", "toward lean"}, Zero: "keep units"}
	oldLeans = text.Enum[OldLean]{Kind: "old lean", Names: []string{"", "stays in B"}, Zero: "may cross"}
)

// String gives the name; "keep units" for zero.
func (t Tens) String() string { return tens.String(t) }

// MarshalText gives the name; the zero value is empty text.
func (t Tens) MarshalText() ([]byte, error) { return tens.Marshal(t) }

// UnmarshalText reads what [Tens.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (t *Tens) UnmarshalText(b []byte) error { return tens.Unmarshal(t, b) }

// String gives the name; "may cross" for zero.
func (o OldLean) String() string { return oldLeans.String(o) }

// MarshalText gives the name; the zero value is empty text.
func (o OldLean) MarshalText() ([]byte, error) { return oldLeans.Marshal(o) }

// UnmarshalText reads what [OldLean.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (o *OldLean) UnmarshalText(b []byte) error { return oldLeans.Unmarshal(o, b) }

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

// Balance combines skeletal and lean maturity into overall maturity with the
// default [Balancing].
//
// The federal rule has no arithmetic: bone gets slightly more weight, and the
// overall score is never more than one full group from bone (official:
// ams-maturity-slides, cfr-1965-53-general). The arithmetic is the one taught to
// judges (common practice: quiz-quality-concepts). In this order:
//
//  1. The mean of the two; where it falls between two units, the one nearer to
//     bone (derived).
//  2. Moved 10 units toward bone when the two are more than 40 units apart.
//  3. Held to within 100 units of bone.
//  4. With bone C15 or older, held at C00 or older.
//  5. Under [OldLeanStaysInB], with bone younger than C00, held at B99 or younger.
//  6. Under [TensTowardBone] and [TensTowardLean], to the nearest ten. A score that
//     ends in 5 goes to the ten on the side of the score named, and to the younger
//     ten where the score named is itself that 5. A ten that breaks 3, 4 or 5, or
//     that is older than both bone and lean, gives way to the ten on the other side
//     (derived); one of the two always keeps them.
//
// So the result under a rounding to tens is always a ten, and two equal scores never
// come out older than they are: A27 and A27 give A20.
//
// An unset or invalid score gives a [*FieldError] for "skeletal maturity" or
// "lean maturity".
func Balance(skeletal, lean Score) (Score, error) { return Balancing{}.Balance(skeletal, lean) }

// Balance is the function [Balance] under these rules.
func (r Balancing) Balance(skeletal, lean Score) (Score, error) {
	if !skeletal.IsValid() || !lean.IsValid() || !r.named() {
		return 0, r.check(skeletal, lean)
	}
	return r.balance(skeletal, lean, oldestScore, nil), nil
}

func (r Balancing) check(skeletal, lean Score) error {
	return fault.Join(fault.At("skeletal", "", skeletal.Check("skeletal maturity")), fault.At("lean", "", lean.Check("lean maturity")), r.Check())
}

// Check returns an error that tells of every rule that is not one of the named
// choices; nil when there is none.
func (r Balancing) Check() error {
	var all [2]error
	if r.Tens > TensTowardLean {
		all[0] = &FieldError{Path: "tens", Field: "rules: tens", Value: r.Tens.String(), Allowed: tens.Allowed(), Err: ErrUnknown}
	}
	if r.OldLean > OldLeanStaysInB {
		all[1] = &FieldError{Path: "old_lean", Field: "rules: old lean", Value: r.OldLean.String(), Allowed: oldLeans.Allowed(), Err: ErrUnknown}
	}
	return fault.Join(all[:]...)
}

// oldestScore bounds nothing; see balance.
const oldestScore = Score(600)

// balance runs the rules in their order. The result is no older than oldest, and t
// takes down each step; a nil t takes down nothing.
func (r Balancing) balance(bone, lean, oldest Score, t *trail) Score {
	s := mean(bone, lean)
	gap := bone - lean
	if gap > wider {
		s += shift
	} else if gap < -wider {
		s -= shift
	}
	if t != nil {
		t.start(bone, lean, s)
	}
	lo, hi := bone-group, min(bone+group, max(bone, lean))
	s = t.move(s, min(max(s, lo), bone+group), byGroup)
	if bone >= hardBone {
		lo = max(lo, firstC)
		s = t.move(s, max(s, firstC), byHardBone)
	}
	if r.OldLean == OldLeanStaysInB && bone < firstC {
		hi = min(hi, firstC-1)
		s = t.move(s, min(s, firstC-1), byOldLean)
	}
	if oldest != oldestScore {
		hi = min(hi, oldest)
		s = min(s, oldest)
	}
	switch r.Tens {
	case TensTowardBone:
		s = t.move(s, ten(s, bone, lo, hi), byTensBone)
	case TensTowardLean:
		s = t.move(s, ten(s, lean, lo, hi), byTensLean)
	}
	return s
}

// mean is the middle of the two, a half unit going to bone.
func mean(bone, lean Score) Score {
	up := Score(0)
	if bone > lean {
		up = 1 // moves a sum that is odd alone
	}
	return (bone + lean + up) / 2
}

// ten rounds s to the nearest ten within lo and hi, a five toward the score to.
func ten(s, to, lo, hi Score) Score {
	units := s % 10
	if units == 0 {
		return s
	}
	down := s - units
	up := down + 10
	if up > hi || down >= lo && (units < 5 || units == 5 && to <= s) {
		return down
	}
	return up
}

// reason numbers the rules that move a score on from the mean.
type reason uint8

const (
	byGroup reason = iota
	byHardBone
	byOldLean
	byTensBone
	byTensLean
)

// reasons are their words and the ground under each.
var reasons = [...]struct {
	rule string
	cite cite.Citation
}{
	byGroup:    {"never more than one full group from skeletal", cite.Citation{Standing: cite.Official, IDs: "ams-maturity-slides cfr-1965-53-general"}},
	byHardBone: {"skeletal C15 or older: not younger than C00", cite.Citation{Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"}},
	byOldLean:  {"skeletal in B: older lean does not carry it into C, by the caller's choice", cite.Citation{Standing: cite.Derived}},
	byTensBone: {"to the nearest ten units, fives toward skeletal", cite.Citation{Standing: cite.Memory}},
	byTensLean: {"to the nearest ten units, fives toward lean", cite.Citation{Standing: cite.Derived}},
}

var citeMean = cite.Citation{Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"}

// trail takes down what balance does. A nil trail takes down nothing.
type trail struct {
	bone  Score
	steps []cite.Step
}

func (t *trail) start(bone, lean, s Score) {
	rule := "skeletal and lean at most 40 units apart: their mean"
	if max(bone-lean, lean-bone) > wider {
		rule = "skeletal and lean more than 40 units apart: their mean, then 10 units toward skeletal"
	}
	t.bone = bone
	t.add(rule, "skeletal "+bone.String()+", lean "+lean.String(), s, citeMean)
}

// move returns to, and takes down the rule that moved s there, if it did.
func (t *trail) move(s, to Score, by reason) Score {
	if t != nil && to != s {
		t.moved(s, to, by)
	}
	return to
}

func (t *trail) moved(s, to Score, by reason) {
	t.add(reasons[by].rule, s.String()+" with skeletal "+t.bone.String(), to, reasons[by].cite)
}

func (t *trail) add(rule, given string, s Score, c cite.Citation) {
	t.steps = append(t.steps, cite.Step{Name: "overall maturity", Rule: rule, Given: given, Result: s.String(), Cite: c})
}
