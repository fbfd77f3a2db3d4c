// Package pagetest holds the pages of the examples to what a reader needs, in a
// real browser without a window: headings in order, tables with captions and heads,
// fields with labels, pictures with words, contrast of 4.5 to 1 between words and
// what is under them, everything within reach of the keyboard, nothing cut off on a
// phone 390 pixels wide, no request for anything outside of the page, and one sheet
// of paper for each page.
//
// It is a module of its own, since it needs a package that drives a browser. The
// browser is Debian's chromium; the project's check installs it where it is missing.
package pagetest
