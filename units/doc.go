// Package units holds the quantities of the library.
package units
