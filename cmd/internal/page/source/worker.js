// The engine in a worker: the first message brings it, packed as the page carries it or
// as another worker has made it ready; all others are questions.
const go = new Go();
const waiting = [];
let ready = false;
const reply = (m) => {
	const from = performance.now(), text = globalThis.ribwright(m.text);
	postMessage({ id: m.id, text, took: performance.now() - from });
};
async function unpacked(engine) {
	const raw = atob(engine), bytes = new Uint8Array(raw.length);
	for (let i = 0; i < raw.length; i++) bytes[i] = raw.charCodeAt(i);
	return WebAssembly.compileStreaming(new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip")), { headers: { "Content-Type": "application/wasm" } }));
}
onmessage = async ({ data }) => {
	if (data.engine === undefined) {
		if (ready) reply(data); else waiting.push(data);
		return;
	}
	try {
		const module = typeof data.engine === "string" ? await unpacked(data.engine) : data.engine;
		go.run(await WebAssembly.instantiate(module, go.importObject));
		ready = true;
		postMessage({ ready: module });
		for (const m of waiting.splice(0)) reply(m);
	} catch (e) {
		postMessage({ failed: String(e) });
	}
};
