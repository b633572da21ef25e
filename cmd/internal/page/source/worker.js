// The engine in a worker: the first message brings it, all others are questions.
const go = new Go();
const waiting = [];
let ready = false;
const reply = (m) => postMessage({ id: m.id, text: globalThis.ribwright(m.text) });
onmessage = async ({ data }) => {
	if (data.engine === undefined) {
		if (ready) reply(data); else waiting.push(data);
		return;
	}
	try {
		const raw = atob(data.engine), bytes = new Uint8Array(raw.length);
		for (let i = 0; i < raw.length; i++) bytes[i] = raw.charCodeAt(i);
		const unpacked = new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip")), { headers: { "Content-Type": "application/wasm" } });
		const { instance } = await WebAssembly.instantiateStreaming(unpacked, go.importObject);
		go.run(instance);
		ready = true;
		postMessage({ ready: true });
		for (const m of waiting.splice(0)) reply(m);
	} catch (e) {
		postMessage({ failed: String(e) });
	}
};
