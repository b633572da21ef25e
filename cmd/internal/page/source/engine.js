// Questions to the engine: in a worker when the page carries it, else of the server that
// handed the page out.
const byId = (id) => document.getElementById(id);
const carried = byId("engine").textContent;
const waiting = new Map();
let asked = 0, worker = null;

function startWorker() {
	worker = new Worker(URL.createObjectURL(new Blob([byId("worker").textContent], { type: "text/javascript" })));
	worker.onmessage = ({ data }) => {
		if (data.ready) { document.documentElement.dataset.engine = "ready"; return; }
		if (data.failed) { say("The engine could not start in this browser: " + data.failed, true); return; }
		waiting.get(data.id)?.(JSON.parse(data.text));
		waiting.delete(data.id);
	};
	worker.onerror = (e) => say("The engine stopped: " + e.message + ". Reload the page; nothing is lost.", true);
	worker.postMessage({ engine: carried });
	byId("engine").remove();
}
if (carried) startWorker(); else document.documentElement.dataset.engine = "ready";

async function ask(question) {
	const text = JSON.stringify(question);
	if (worker) {
		const id = ++asked;
		return new Promise((done) => { waiting.set(id, done); worker.postMessage({ id, text }); });
	}
	try {
		const r = await fetch("ask", { method: "POST", headers: { "Content-Type": "application/json" }, body: text });
		if (!r.ok) return { fault: { says: await r.text() } };
		return await r.json();
	} catch {
		return { fault: { says: "The program that answers this page has ended. Start it again and reload the page." } };
	}
}

// say tells of what goes on, or of what is wrong.
function say(words, wrong) {
	byId("status").textContent = words;
	byId("status").classList.toggle("wrong", Boolean(wrong));
}
