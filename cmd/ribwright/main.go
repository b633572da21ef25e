// Command ribwright goes from a design file to the full-size patterns of a
// canoe built without a mold.
package main

import (
	"os"
	"runtime/debug"
)

// rubbish is how much of what is in use may be left lying before it is cleared away, percent:
// most verbs end within a second or two and keep 20 to 50 MB in use. GOGC says otherwise.
const rubbish = 400

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(rubbish)
	}
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}
