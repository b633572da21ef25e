// Command wasm is the engine in a browser's worker: it takes messages and answers them.
package main

import (
	"runtime/debug"
	"syscall/js"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
)

// rubbish is how much of what is in use may be left lying before it is cleared away, percent.
// There is one thread, so a slider waits for every clearing; a page's answers take a few MB each.
const rubbish = 400

func main() {
	debug.SetGCPercent(rubbish)
	w := job.World{Made: job.UsualDate(), Kept: new(job.Kept)} // a page asks of one boat again and again
	js.Global().Set("ribwright", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return string(answer.To([]byte(args[0].String()), w))
	}))
	select {} // answers until the worker ends
}
