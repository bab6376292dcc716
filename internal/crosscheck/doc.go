// Package crosscheck holds the tests and benchmarks of the library that need what
// its callers should not have to fetch: other packages of quantities, solvers of linear
// equations, and a database of units that may be installed on the machine. It is a module of
// its own for that reason, and exports only what its command speed races.
//
//	go run ./speed
//	go test ./...
//	go test -run '^$' -bench . -count 10 ./... | tee new.txt && benchstat new.txt
package crosscheck
