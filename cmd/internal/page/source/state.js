// The state of the page: which boat, what is changed of it, how it is looked at. All of
// it stands in the address, and on the device. Every change is a step in the browser's
// own history, so undo and the back button are one.
const shipped = ["brook", "lake", "river"];
const start = JSON.parse(byId("start").textContent);
const usualOutfit = { kind: "sail", rig: "spritsail", purpose: "open", beside: "", nest: ["lake"] };
const usualEye = { stand: "bow", fault: "proud", size: 12 };
const fresh = () => ({ base: start.text ? "file" : start.name, name: start.name, text: start.text, units: "metric", set: {}, people: null, turn: 55, rise: 22, heel: 0, paper: "letter", pin: null, margins: "", across: "", down: "", view: "boat", skill: "", prices: "mixed", boards: [], eye: usualEye, table: null, outfit: usualOutfit, sail: false, cut: "" });
let state = fresh();
let at = history.state?.n ?? 0, newest = at; // steps of history, from the first that this tab saw
let last = { of: "", when: 0 };

// What is as usual leaves no trace in the address.
const plain = { text: "", paper: "letter", units: "metric", set: {}, heel: 0, margins: "", across: "", down: "", view: "boat", skill: "", prices: "mixed", boards: [], eye: usualEye, outfit: usualOutfit, sail: false, cut: "" };
const encode = (s) => "#" + encodeURIComponent(JSON.stringify(Object.fromEntries(Object.entries(s).filter(([k, v]) => v !== "" && v !== null && JSON.stringify(v) !== JSON.stringify(plain[k])))));

const known = (b) => Array.isArray((b.outfit ?? usualOutfit).nest) && (b.prices !== "own" || typeof b.table?.text === "string") && (b.eye ?? usualEye).size >= 0 && [b.boards ?? []].every((all) => Array.isArray(all) && all.every((t) => typeof t === "string")) && b.set && typeof b.set === "object" && (shipped.includes(b.base) || (b.base === "people" && b.people) || (b.base === "file" && b.text));

// decode reads an address; null where it holds no boat.
function decode(hash) {
	if (hash.length < 2) return null;
	try {
		const s = { ...fresh(), text: "", set: {}, ...JSON.parse(decodeURIComponent(hash.slice(1))) };
		return known(s) && (!s.pin || known(s.pin)) ? s : null;
	} catch {
		return null;
	}
}

// keep writes the state down: as a step of its own, or in place of the newest.
function keep(step) {
	if (step) newest = at + 1;
	try {
		if (step) history.pushState({ n: ++at }, "", encode(state)); else history.replaceState({ n: at }, "", encode(state));
	} catch { /* a browser may forbid so many */ }
	remember("ribwright", encode(state));
	byId("undo").disabled = at === 0;
	byId("redo").disabled = at >= newest;
}

// remember keeps a text on the device; null forgets it.
function remember(name, text) {
	try { if (text === null) localStorage.removeItem(name); else localStorage.setItem(name, text); } catch { /* a browser may forbid it */ }
}

function recall(name) {
	try { return localStorage.getItem(name) ?? ""; } catch { return ""; }
}

// change gives the state other values, as a step that can be undone. Changes of one thing
// in quick succession, as by an arrow key held down, are one step.
function change(values, of = "") {
	state = { ...state, ...values };
	notice = ""; noticeWrong = wrongStands = false;
	const now = performance.now(), same = of && of === last.of && now - last.when < 800 && at === newest;
	last = { of, when: now };
	keep(!same);
	arrive();
}

// travelled follows the browser to another step, or to an address that was typed.
function travelled() {
	const s = decode(location.hash);
	if (!s) { keep(false); return; }
	if (history.state) at = history.state.n; else newest = ++at;
	state = s;
	notice = ""; noticeWrong = wrongStands = false;
	last = { of: "", when: 0 };
	keep(false);
	arrive();
}

function remembered() {
	return decode(location.hash) ?? (start.text ? null : decode(recall("ribwright"))) ?? fresh();
}
