//go:build (amd64 && !amd64.v3) || 386 || wasm

package grid

// The compiler does not fuse multiplication and addition for this target.
const compilerDoesNotFuse = true
