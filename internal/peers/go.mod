module example.com/ribface/internal/peers

go 1.24

require (
	example.com/ribface v0.0.0
	github.com/cockroachdb/apd/v3 v3.2.3
	github.com/govalues/decimal v0.1.36
	github.com/shopspring/decimal v1.6.0
)

replace example.com/ribface => ../..
