// Runs the engine in Node as a browser's worker does: one question a line in, one answer
// a line out, then the milliseconds that each took.
const fs = require("fs");
const [runtime, engine] = process.argv.slice(2);
(0, eval)(fs.readFileSync(runtime, "utf8"));
const go = new globalThis.Go();
WebAssembly.instantiate(fs.readFileSync(engine), go.importObject).then(({ instance }) => {
	go.run(instance);
	const took = [];
	for (const line of fs.readFileSync(0, "utf8").split("\n").filter(Boolean)) {
		const at = performance.now();
		const text = globalThis.ribwright(line);
		took.push(performance.now() - at);
		fs.writeSync(1, text + "\n");
	}
	fs.writeSync(1, JSON.stringify(took) + "\n");
	process.exit(0);
});
