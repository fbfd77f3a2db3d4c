// Package prices holds what the public weekly report of premiums and discounts
// printed, as price grids without a base, for the examples that price carcasses. The
// files are data: put another in their place, or name one of your own.
//
// The averages of the week of 2025-01-06 are whole (official: ams-ct155-2025-01-06).
// Those of 2014-10-20 are of a reprint of which part could be read (published:
// ams-ct169-2014-10-20): that grid has no price for Choice or for the common weights
// and yields. A market of one week is no rule; a sale wants its own amounts.
//
// The printed report becomes a grid so (derived): Choice is the base for low and top
// choice alike. Hardbone stands in place of the tier, because the report has no
// category for the grades of an old skeleton; every other attribute is added. An edge of
// weight belongs to the band below it, because the last row is printed "over 1,050",
// and an edge of yield to the band above it, because the last row is printed "5.0 and
// up". What the report does not print has no price.
package prices

import (
	_ "embed"
	"encoding/json"
	"os"

	"example.com/ribface/grade/price"
	"github.com/shopspring/decimal"
)

//go:embed week-2025-01-06.json
var latest []byte

// Read returns the terms of a file of this form with the base given; without a name
// those of the week of 2025-01-06.
func Read(file string, base decimal.Decimal) (price.Offer, error) {
	text := latest
	if file != "" {
		var err error
		if text, err = os.ReadFile(file); err != nil {
			return price.Offer{}, err
		}
	}
	var t price.Offer
	if err := json.Unmarshal(text, &t); err != nil {
		return price.Offer{}, err
	}
	t.Base = base
	return t, nil
}
