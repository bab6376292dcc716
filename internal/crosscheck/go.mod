module example.com/steelyard/internal/crosscheck

go 1.25

require (
	example.com/steelyard v0.0.0
	github.com/shopspring/decimal v1.4.0
	gonum.org/v1/gonum v0.17.0
)

replace example.com/steelyard => ../..
