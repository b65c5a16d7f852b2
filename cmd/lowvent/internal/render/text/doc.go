// Package text lays out words for a terminal: it wraps them to a width, hangs
// their indents, and keeps whatever a file says from driving the terminal. It
// knows nothing of gas.
package text
