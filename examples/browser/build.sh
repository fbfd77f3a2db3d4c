#!/bin/sh
# Builds the page into the folder named by the first argument.
set -eu
out=${1:?usage: build.sh folder}
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$out"
out=$(cd "$out" && pwd)
cd "$here"
GOOS=js GOARCH=wasm go build -trimpath -ldflags="-s -w" -o "$out/ribface.wasm" .
cp "$(go env GOROOT)/lib/wasm/wasm_exec.js" index.html "$out/"
gzip -9 -k -f "$out/ribface.wasm"
wc -c "$out/ribface.wasm" "$out/ribface.wasm.gz"
