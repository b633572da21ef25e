// Sliders: the measures that the engine says can be changed, each within its band.
const fieldOf = { length: "hull-length", beam: "hull-beam", depth: "hull-depth", rocker: "rocker", "seat height": "seat-height", "seat place": "seat-place", "rib thickness": "rib-thickness", "thwart place": "thwart-place" };
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

function showMeasures(all) {
	const box = byId("measures"), names = all.map((m) => m.name).join();
	if (box.dataset.names !== names) { box.replaceChildren(...all.map(slider)); box.dataset.names = names; }
	for (const m of all) {
		const div = byId("m-" + fieldOf[m.name]), input = div.querySelector("input");
		input.step = m.step_mm; input.min = Math.ceil(m.least_mm / m.step_mm) * m.step_mm; input.max = m.most_mm;
		const now = state.set[fieldOf[m.name]] ?? m.now_mm; // an answer may be older than the hand
		if (input.value !== String(now)) input.value = now;
		div.querySelector("output").textContent = shownLength(m.now_mm, m.step_mm);
		div.querySelector(".band").textContent = `${shownLength(m.least_mm, m.step_mm)} to ${shownLength(m.most_mm, m.step_mm)}: ${m.why}.`;
		input.setAttribute("aria-valuetext", shownLength(m.now_mm, m.step_mm));
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
		look();
	};
	input.onpointerup = () => { dragging = false; }; // a hand that comes back to where it was changes nothing
	input.onchange = () => { dragging = false; change({}, field); };
	head.append(label, out); div.append(head, input, says, band);
	return div;
}
