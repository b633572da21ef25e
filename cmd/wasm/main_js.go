// Command wasm is the engine in a browser's worker: it takes messages and answers them.
package main

import (
	"syscall/js"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
)

func main() {
	js.Global().Set("ribwright", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return string(answer.To([]byte(args[0].String()), job.UsualDate()))
	}))
	select {} // answers until the worker ends
}
