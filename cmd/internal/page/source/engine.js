// Questions to the engine: in a worker when the page carries it, else of the server that
// handed the page out.
const byId = (id) => document.getElementById(id);
const carried = byId("engine").textContent;
const waiting = new Map();
const live = ["look", "sight"]; // what follows a slider
let asked = 0, worker = null, bench = null, engine = carried;

// startWorker starts an engine. The first one keeps up with the sliders; what takes longer
// goes to a second, which is started when it is first wanted, from what the first unpacked.
function startWorker() {
	const w = new Worker(URL.createObjectURL(new Blob([byId("worker").textContent], { type: "text/javascript" })));
	w.onmessage = ({ data }) => {
		if (data.ready) { engine = data.ready; document.documentElement.dataset.engine = "ready"; return; }
		if (data.failed) { say("The engine could not start in this browser: " + data.failed, true); return; }
		document.documentElement.dataset.worked = data.took.toFixed(1);
		waiting.get(data.id)?.(JSON.parse(data.text));
		waiting.delete(data.id);
	};
	w.onerror = (e) => say("The engine stopped: " + e.message + ". Reload the page; nothing is lost.", true);
	w.postMessage({ engine });
	return w;
}
if (carried) { worker = startWorker(); byId("engine").remove(); } else document.documentElement.dataset.engine = "ready";

async function ask(question) {
	const text = JSON.stringify(question);
	if (worker) {
		const id = ++asked, to = live.includes(question.verb) || engine === carried ? worker : bench ??= startWorker();
		return new Promise((done) => { waiting.set(id, done); to.postMessage({ id, text }); });
	}
	try {
		const r = await fetch("ask", { method: "POST", headers: { "Content-Type": "application/json" }, body: text });
		if (!r.ok) return { fault: { says: await r.text() } };
		return await r.json();
	} catch {
		return { fault: { says: "The program that answers this page has ended. Start it again and reload the page." } };
	}
}

let wrongStands = false; // whether what was found wrong stands there, and nothing is changed since

// say tells of what goes on, or of what is wrong.
function say(words, wrong) {
	wrongStands = Boolean(wrong);
	byId("status").textContent = words;
	byId("status").classList.toggle("wrong", wrongStands);
}
