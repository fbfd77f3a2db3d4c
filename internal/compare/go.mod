module example.com/ribface/internal/compare

go 1.24.0

require (
	example.com/ribface v0.0.0
	github.com/cockroachdb/apd/v3 v3.2.3
	github.com/govalues/decimal v0.1.36
	github.com/shopspring/decimal v1.6.0
	gonum.org/v1/gonum v0.17.0
)

replace example.com/ribface => ../..
