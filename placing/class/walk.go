package class

import (
	"database/sql/driver"
	"iter"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
)

// Site is a place of the carcass at which a judge compares all exhibits of a
// class, and what is compared there: fat or muscling. The zero Site is not set.
// The sites are in the order of a walk from the top of a hanging carcass, which
// is the round, to the bottom, fat first.
type Site uint8

// The sites. Fat at round, inside round, rump, hip, cod or udder, flank, loin,
// rib, plate, clod, shoulder, neck and brisket is named by the federal text on
// yield grades (official: cfr-54-105, cfr-1965-53-p26). Muscling of round, loin,
// rib and clod, and the four traits of the round, are common practice, no source.
// [Site.LookFor] says what to look for at each.
const (
	FatRound       Site = 1 + iota // outside round
	FatInsideRound                 // inside round
	FatRump                        // rump
	FatHip                         // hip
	FatCod                         // cod or udder
	FatFlank                       // flank
	FatLoinEdge                    // loin edge
	FatRib                         // over the rib, away from the place of measurement
	FatPlate                       // plate
	FatClod                        // clod
	FatShoulder                    // top of the shoulder
	FatNeck                        // neck
	FatBrisket                     // brisket

	RoundPlumpness // plumpness of the round
	RoundLength    // how far down the round is filled out
	RoundWidth     // width through the round
	RoundCushion   // cushion of the round
	MuscleLoin     // loin
	MuscleRib      // rib
	MuscleClod     // clod
)

var sites = text.Enum[Site]{Kind: "site", Names: []string{"",
	"fat over round", "fat over inside round", "fat over rump", "fat over hip", "fat in cod or udder", "fat in flank", "fat over loin edge", "fat over rib", "fat over plate", "fat over clod", "fat over shoulder", "fat over neck", "fat in brisket",
	"plumpness of round", "length of round", "width of round", "cushion of round", "muscling of loin", "muscling of rib", "muscling of clod"}}

// Sites yields all sites in the order of the walk.
func Sites() iter.Seq[Site] { return sites.All() }

// Fat reports whether fat is compared at the site; elsewhere it is muscling.
func (s Site) Fat() bool { return s.IsValid() && s <= FatBrisket }

// Cite returns where the site comes from; the zero Citation for one that is not
// set.
func (s Site) Cite() cite.Citation {
	switch {
	case !s.IsValid():
		return cite.Citation{}
	case s.Fat():
		return cite.Citation{Standing: cite.Official, IDs: "cfr-54-105 cfr-1965-53-p26"}
	default:
		return cite.Citation{Standing: cite.CommonPractice}
	}
}

// lookFor says for every site what a judge looks for there. All but that for the
// outside round are from memory.
var lookFor = [...]string{
	FatRound:       "Look for lean that shows through on the outside of the round; the more purple or blue shows, the less fat lies over it.",
	FatInsideRound: "Look at how far the fat runs over the inside round and how thick it lies; a trim one shows bare lean.",
	FatRump:        "Look for fat that bulges over the rump and beside the tailhead.",
	FatHip:         "Look at the hip from behind; a smooth, rounded hip is a fat one.",
	FatCod:         "Look at how large and how full the cod of a steer or the udder of a heifer is.",
	FatFlank:       "Look at how thick and heavy the flank hangs.",
	FatLoinEdge:    "Look along the edge of the loin for the depth of fat, away from where it was cut.",
	FatRib:         "Look down from the place of measurement to the lower rib, where fat often thickens.",
	FatPlate:       "Look at the plate for fat that lies thick and smooth below the rib.",
	FatClod:        "Look for lean that shows through over the clod; a fat one is smooth and white.",
	FatShoulder:    "Look at the top of the shoulder for the depth of fat along the chine.",
	FatNeck:        "Look at the neck for fat that fills it out and hides the lean.",
	FatBrisket:     "Look at how full and wide the brisket hangs from the front.",

	RoundPlumpness: "Look at the round from the side and from behind for how far it bulges.",
	RoundLength:    "Look at how far down toward the shank the round stays full.",
	RoundWidth:     "Look through the widest part of the round from behind.",
	RoundCushion:   "Look at the cushion, between the legs, for how full it is.",
	MuscleLoin:     "Look at the loin for how wide and full it is, and take off what is fat.",
	MuscleRib:      "Look along the rib for how thick and full it is beside the chine.",
	MuscleClod:     "Look at the clod and arm for how far the muscle bulges under the fat.",
}

// LookFor returns one sentence that says what a judge looks for at the site, and
// where it comes from: for the outside round common practice, for all others from
// memory. It returns nothing for a site that is not set.
func (s Site) LookFor() (sentence string, from cite.Citation) {
	switch {
	case !s.IsValid():
		return "", cite.Citation{}
	case s == FatRound:
		return lookFor[s], cite.Citation{Standing: cite.CommonPractice}
	default:
		return lookFor[s], cite.Citation{Standing: cite.Memory}
	}
}

// IsValid reports whether s is one of the named sites.
func (s Site) IsValid() bool { return sites.Valid(s) }

// String gives the name, as "fat over rump"; "unset" for zero.
func (s Site) String() string { return sites.String(s) }

// ParseSite reads the name of a site, as [Site.String] writes it, in any case and with
// blanks, hyphens or underscores between the words.
func ParseSite(s string) (Site, error) { return sites.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (s Site) MarshalText() ([]byte, error) { return sites.Marshal(s) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (s *Site) UnmarshalText(b []byte) error { return sites.Unmarshal(s, b) }

// Value gives the name for a database; NULL for the zero Site.
func (s Site) Value() (driver.Value, error) { return sites.Value(s) }

// Scan reads a name from a database column that holds text; NULL gives the zero Site.
// On error the receiver is left as it was.
func (s *Site) Scan(src any) error { return sites.Scan(s, src) }

// Look is what a judge found at one site: all exhibits, the fattest or the
// heaviest muscled first, with ties. [placing.RankScores] makes the ranking of a judge
// who gives scores.
type Look struct {
	Site  Site            `json:"site"`
	Order placing.Ranking `json:"order"`
}

// MustParseRanking is [placing.ParseRanking] for hard-coded text, since a walk is
// written with it; it panics on an error.
func MustParseRanking(s string) placing.Ranking {
	r, err := placing.ParseRanking(s)
	if err != nil {
		panic(err)
	}
	return r
}

// Walk is the looks a judge took over the carcasses of a class. A walk may be
// half finished, and the order of its looks does not matter. The nil Walk is no
// walk at all, which is valid.
type Walk []Look

// Check returns a [*placing.FieldError] for every look that has no site, a site that
// was looked at before, or no ranking of n exhibits, with its place from 0 in the
// path, as "[0].site"; nil when there is none.
func (w Walk) Check(n int) error {
	var problems []error
	var seen [MuscleClod + 1]bool
	for i, l := range w {
		look, path := "look "+strconv.Itoa(i+1), nth("", i)
		switch err := sites.Check(look+": site", l.Site); {
		case err != nil:
			problems = append(problems, fault.At(path+".site", "", err))
		case seen[l.Site]:
			problems = append(problems, &fault.FieldError{Path: path + ".site", Field: look + ": site", Value: l.Site.String(), Allowed: "every site once", Err: fault.ErrRepeated})
		default:
			seen[l.Site] = true
			look = l.Site.String()
		}
		if l.Order.Len() == n {
			continue
		}
		order := &fault.FieldError{Path: path + ".order", Field: look, Allowed: "a ranking of " + strconv.Itoa(n) + " exhibits", Err: fault.ErrMissing}
		if l.Order.IsValid() {
			order.Value, order.Err = l.Order.String(), fault.ErrRange
		}
		problems = append(problems, order)
	}
	return fault.Join(problems...)
}

// At returns the ranking at a site; ok is false where nobody looked.
func (w Walk) At(s Site) (r placing.Ranking, ok bool) {
	for _, l := range w {
		if l.Site == s {
			return l.Order, true
		}
	}
	return placing.Ranking{}, false
}

// Missing returns the sites that were not looked at, in the order of the walk;
// nil for a walk that is complete.
func (w Walk) Missing() []Site {
	var all []Site
	for s := range Sites() {
		if _, ok := w.At(s); !ok {
			all = append(all, s)
		}
	}
	return all
}

// total adds up the places of an exhibit over the sites of fat or of muscling.
func (w Walk) total(exhibit int, fat bool) (sum, looked int64) {
	for _, l := range w {
		if l.Site.Fat() == fat {
			sum += int64(l.Order.Place(exhibit))
			looked++
		}
	}
	return sum, looked
}
