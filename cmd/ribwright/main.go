// Command ribwright goes from a design file to the full-size patterns of a
// canoe built without a mold.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }
