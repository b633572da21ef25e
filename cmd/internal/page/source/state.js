// The state of the page: which boat, what is changed of it, how it is looked at. All of
// it stands in the address, and on the device.
const shipped = ["brook", "lake", "river"];
const start = JSON.parse(byId("start").textContent);
const fresh = () => ({ base: start.text ? "file" : start.name, name: start.name, text: start.text, units: "metric", set: {}, people: null, turn: 55, rise: 22, paper: "letter" });
let state = fresh();
const past = [], future = [];

const encode = (s) => "#" + encodeURIComponent(JSON.stringify(Object.fromEntries(Object.entries(s).filter(([k, v]) => v !== "" && v !== null && JSON.stringify(v) !== JSON.stringify({ text: "", paper: "letter", units: "metric", set: {} }[k])))));

// decode reads an address; null where it holds no boat.
function decode(hash) {
	if (hash.length < 2) return null;
	try {
		const s = { ...fresh(), text: "", set: {}, ...JSON.parse(decodeURIComponent(hash.slice(1))) };
		const known = shipped.includes(s.base) || (s.base === "people" && s.people) || (s.base === "file" && s.text);
		return known && typeof s.set === "object" ? s : null;
	} catch {
		return null;
	}
}

function keep() {
	history.replaceState(null, "", encode(state));
	try { localStorage.setItem("ribwright", encode(state)); } catch { /* a browser may forbid it */ }
	byId("undo").disabled = past.length === 0;
	byId("redo").disabled = future.length === 0;
}

// change gives the state other values; what was can be had back.
function change(values) {
	past.push(JSON.stringify(state));
	if (past.length > 200) past.shift();
	future.length = 0;
	state = { ...state, ...values };
	arrive();
}

function step(from, to) {
	if (from.length === 0) return;
	to.push(JSON.stringify(state));
	state = JSON.parse(from.pop());
	arrive();
}

function remembered() {
	let kept = "";
	try { kept = localStorage.getItem("ribwright") ?? ""; } catch { /* a browser may forbid it */ }
	return decode(location.hash) ?? (start.text ? null : decode(kept)) ?? fresh();
}
