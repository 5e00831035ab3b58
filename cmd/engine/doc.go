//go:build !(js && wasm)

// Command engine is everything up to the worksheets, for the browser; it is
// built with GOOS=js GOARCH=wasm.
package main

func main() { panic("built for the browser: GOOS=js GOARCH=wasm") }
