// Package chart draws lines over a pair of axes into a picture. Every line has its name written at its end and a dash of its own,
// so that no key is needed and a print in grey can be read; names that would run into one another are moved apart.
package chart
