package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"math/rand/v2"
	"slices"
	"strings"
)

// mutant is one change to one place.
type mutant struct {
	file      *file
	within    *ast.FuncDecl // nil for a package's constants and variables
	at        token.Position
	reach     token.Position // where a test must pass to meet it
	from, to  int            // the bytes that are replaced
	text      string         // what replaces them
	change    string         // old → new, as a reader would write it
	line, dir string         // the source line, the package's folder below the module's
}

// String is the line of the report: place, function, old → new.
func (m mutant) String() string {
	return fmt.Sprintf("%s/%s:%d:%d: %s: %s", m.dir, m.file.name, m.at.Line, m.at.Column, functionName(m.within), m.change)
}

// draw chooses n mutants at random and keeps their order.
func draw(all []mutant, n int, seed uint64) []mutant {
	chosen := rand.New(rand.NewPCG(seed, 0)).Perm(len(all))[:n]
	slices.Sort(chosen)
	var out []mutant
	for _, i := range chosen {
		out = append(out, all[i])
	}
	return out
}

// short is a text on one line, as a report can show it.
func short(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if letters := []rune(text); len(letters) > 70 {
		return string(letters[:34]) + " ... " + string(letters[len(letters)-30:])
	}
	return text
}

// never and the two functions below it are in every package that is broken; see stage.
const (
	never = "mutantNever"
	zero  = "mutantZero"
	none  = "mutantNoError"
)

// swaps are the operators that take another's place, in expressions and in assignments.
var swaps = map[token.Token][]token.Token{
	token.ADD: {token.SUB}, token.SUB: {token.ADD}, token.MUL: {token.QUO}, token.QUO: {token.MUL}, token.REM: {token.MUL},
	token.AND: {token.OR}, token.OR: {token.AND}, token.XOR: {token.AND}, token.SHL: {token.SHR}, token.SHR: {token.SHL}, token.AND_NOT: {token.AND},
	token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR}, token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
	token.EQL: {token.NEQ}, token.NEQ: {token.EQL}, token.LAND: {token.LOR}, token.LOR: {token.LAND},
	token.ADD_ASSIGN: {token.SUB_ASSIGN}, token.SUB_ASSIGN: {token.ADD_ASSIGN}, token.MUL_ASSIGN: {token.QUO_ASSIGN}, token.QUO_ASSIGN: {token.MUL_ASSIGN},
	token.AND_ASSIGN: {token.OR_ASSIGN}, token.OR_ASSIGN: {token.AND_ASSIGN}, token.INC: {token.DEC}, token.DEC: {token.INC},
}
