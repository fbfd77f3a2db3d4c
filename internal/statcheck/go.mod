module example.com/ribface/internal/statcheck

go 1.24.0

replace example.com/ribface => ../..

require (
	example.com/ribface v0.0.0-00010101000000-000000000000
	gonum.org/v1/gonum v0.17.0
)

require github.com/shopspring/decimal v1.6.0 // indirect
