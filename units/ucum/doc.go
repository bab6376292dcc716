// Package ucum reads and writes quantities with codes of the Unified Code for Units
// of Measure, case-sensitive: 12.5 [lb_av], 24.5 [ft_i], 400 N. It is for exchange
// with other programs; people are better served by package units itself.
//
// A text is a decimal number, a space and one of the codes of the table, which
// [Codes] goes through. Nothing else is read: not the case-insensitive codes, not
// terms put together in another way, no annotations. Where the Unified Code has no
// code of its own for a unit, a term of its grammar stands for it, such as
// [lb_av]/[ft_i]; units without either, such as the kip, the ksi and lb/100 ft, are
// not written here, and values in them are written in another unit.
//
// Numbers are exact as in package units: [Parse] rounds once, and [Format] writes
// the fewest digits that Parse reads back as the same value, bit for bit.
//
// # Source and credit
//
// The codes are those of the Unified Code for Units of Measure (UCUM), copyright
// 1999-2022 Regenstrief Institute, Inc., published at https://ucum.org under the
// licence at https://unitsofmeasure.org/license; each was compared with the file
// ucum-essence.xml of that publication. The table here is our own selection and no
// copy of that work. It claims no conformance with it.
package ucum
