module example.com/steelyard

go 1.25

require (
	github.com/google/go-cmp v0.7.0 // indirect
	github.com/shopspring/decimal v1.6.0 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)
