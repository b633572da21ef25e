// Sliders: the measures that the engine says can be changed, each within its band.
const fieldOf = { length: "hull-length", beam: "hull-beam", depth: "hull-depth", rocker: "rocker", "seat height": "seat-height", "seat place": "seat-place", "rib thickness": "rib-thickness", "thwart place": "thwart-place", flare: "flare", fullness: "fullness" };
const unitOf = { flare: "deg", fullness: "%" }; // by field; else mm
const inch = () => state.units === "imperial";

function shownLength(mm, step = 1) {
	if (!inch()) return Number(mm.toFixed(step < 1 ? 1 : 0)) + " mm";
	const n = Math.round(Math.abs(mm) / 25.4 * 16), feet = Math.floor(n / 192);
	return (mm < 0 && n ? "-" : "") + (feet ? feet + " ft " : "") + inches(n % 192) + " in";
}

// inches are those of a number of sixteenths.
function inches(n) {
	const whole = Math.floor(n / 16);
	let part = n % 16, of = 16;
	while (part && part % 2 === 0) { part /= 2; of /= 2; }
	return [whole || !part ? whole : "", part ? part + "/" + of : ""].filter((s) => s !== "").join(" ");
}

function shownMeasure(v, m) {
	if (m.unit !== "mm") return `${Number(v.toFixed(1))} ${m.unit}`;
	if (!m.name.endsWith(" place")) return shownLength(v, m.step);
	return Math.round(v) === 0 ? "midship" : `${shownLength(Math.abs(v), m.step)} ${v > 0 ? "forward" : "aft"}`;
}

function showMeasures(all) {
	const box = byId("measures"), names = all.map((m) => m.name).join();
	if (box.dataset.names !== names) { box.replaceChildren(...all.map(slider)); box.dataset.names = names; }
	for (const m of all) {
		const div = byId("m-" + fieldOf[m.name]), input = div.querySelector("input");
		const ends = { step: m.step, min: Number((Math.ceil(m.least / m.step - 1e-9) * m.step).toFixed(1)), max: m.most };
		for (const [end, v] of Object.entries(ends)) if (input[end] !== String(v)) input[end] = v; // a browser lays the slider out anew for each
		const now = state.set[fieldOf[m.name]] ?? m.now; // an answer may be older than the hand
		if (input.value !== String(now)) input.value = now;
		div.querySelector("output").textContent = shownMeasure(m.now, m);
		div.querySelector(".band").textContent = `${shownMeasure(m.least, m)} to ${shownMeasure(m.most, m)}: ${m.why}.`;
		input.setAttribute("aria-valuetext", shownMeasure(m.now, m));
	}
}

let dragging = false;

function slider(m) {
	const field = fieldOf[m.name], div = document.createElement("div"), head = document.createElement("div"), label = document.createElement("label");
	const out = document.createElement("output"), input = document.createElement("input"), says = document.createElement("p"), band = document.createElement("p");
	div.className = "measure"; div.id = "m-" + field; head.className = "row"; band.className = "band";
	label.textContent = m.name[0].toUpperCase() + m.name.slice(1); label.htmlFor = input.id = "r-" + field;
	input.type = "range"; says.textContent = m.says;
	input.oninput = () => {
		dragging = true;
		state.set = { ...state.set, [field]: Number(input.value) };
		wrongStands = false;
		look();
	};
	input.onpointerup = () => { dragging = false; }; // a hand that comes back to where it was changes nothing
	input.onchange = () => { dragging = false; change({}, field); };
	head.append(label, out); div.append(head, input, says, band);
	return div;
}
