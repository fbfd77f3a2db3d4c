// Package grid holds the test that counts how often the obvious float64 code puts
// a carcass in another yield grade than the exact equation.
//
// The grid is fat 0.00 to 2.00 in by 0.05, kidney, pelvic and heart fat 0.0 to
// 6.0% by 0.5, hot carcass weight 400 to 1,200 lb by 1 and ribeye 7.0 to 20.0 sq
// in by 0.1: 41 x 13 x 801 x 131 = 55,928,223 carcasses. Each is graded by the
// library, in integers, and by float64 code of several forms:
//
//	2.50 + 2.50*fat + 0.20*kph + 0.0038*hcw - 0.32*rea
//
// The Go specification lets a compiler fuse x*y+z into one operation with one
// rounding, and forbids it in float64(x*y)+z. The compiler fuses on arm64,
// ppc64le, s390x and on amd64 with GOAMD64=v3, and not on amd64 v1 or v2, 386
// and wasm. The counts below are of forms that spell out where the roundings are, by
// conversion or by math.FMA, so that they hold on every processor; the plain text
// of the formula is held to the unfused counts only where the build constraints
// of the test say that the compiler does not fuse. With go1.26 the plain text had
// the counts of "additions fused" on amd64 v3, and on arm64, emulated, those of
// "all fused".
//
// A part of the grid is always counted; the flag -grid counts all of it:
//
//	go test ./internal/grid -run TestWholeGrid -v -grid
package grid
