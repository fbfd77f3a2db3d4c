//go:build !((amd64 && !amd64.v3) || 386 || wasm)

package grid

// The compiler fuses multiplication and addition for this target, or may.
const compilerDoesNotFuse = false
