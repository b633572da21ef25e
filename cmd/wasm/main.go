//go:build !js

package main

import "fmt"

func main() {
	fmt.Println("the engine for browsers; go run ./cmd/site puts it into a page")
}
