// How it stands: its curve of righting levers beside those of the shipped boats.
const others = new Map();

async function askOthers() {
	for (const name of shipped) {
		const a = await ask({ verb: "look", names: [name] });
		if (a.numbers) others.set(name, a.numbers.standing.gz);
	}
	if (shown) drawLevers(shown.standing);
}

// heeling: the slider goes from one lever that the engine worked out to the next.
function heeling() {
	byId("heel").oninput = (e) => { state.heel = shown.standing.gz[e.target.value][0]; drawLevers(shown.standing); };
	byId("heel").onchange = () => keep(false);
}

// heeled says what the boat does at a lever, and moves the slider there.
function heeled(s) {
	const slider = byId("heel"), near = s.gz.reduce((best, p, i) => (Math.abs(p[0] - state.heel) < Math.abs(s.gz[best][0] - state.heel) ? i : best), 0);
	byId("heeling").hidden = s.gz.length < 2;
	if (s.gz.length < 2) return null;
	slider.max = s.gz.length - 1; slider.value = near;
	const [deg, mm] = s.gz[near], words = Math.round(deg) + " degrees", end = near === s.gz.length - 1 && s.flooding_deg !== null;
	let says = mm > 0 ? `It pushes back with a lever of ${shownLength(mm)} and comes up by itself.` : "It does not come back by itself: people must lean the other way.";
	if (deg === 0) says = "Upright: nothing pushes either way.";
	if (end) says = "Water comes in over the side. " + says;
	byId("heeled").textContent = words; slider.setAttribute("aria-valuetext", words + ". " + says);
	byId("heel-says").textContent = says;
	byId("heel-says").classList.toggle("wrong", end || (deg > 0 && mm <= 0));
	return s.gz[near];
}

const letter = (i) => String.fromCharCode(97 + i);
const shownMass = (kg) => (inch() ? Math.round(kg * 2.20462) + " lb" : Math.round(kg) + " kg");

function drawLevers(standing) {
	const svg = byId("levers"), w = 360, h = 190, left = 34, low = 24;
	const under = state.pin && pinned ? pinned.numbers.standing.gz : [];
	const known = standing.known;
	const all = [standing.gz, under, ...others.values(), ...known.map((b) => b.gz)].filter((g) => g && g.length);
	const far = 60, high = Math.max(60, ...all.flat().map((p) => p[1])) * 1.05;
	const x = (deg) => left + (w - left) * Math.min(deg, far) / far, y = (mm) => h - low - (h - low - 8) * mm / high;
	const line = (g) => g.map((p, i) => (i ? "L" : "M") + x(p[0]).toFixed(1) + " " + y(p[1]).toFixed(1)).join("");
	svg.setAttribute("viewBox", `0 0 ${w} ${h}`);
	svg.replaceChildren();
	const mark = (px, py, words, anchor) => {
		const t = document.createElementNS(svgns, "text");
		t.setAttribute("x", px); t.setAttribute("y", py); t.setAttribute("text-anchor", anchor); t.textContent = words; svg.append(t);
	};
	pathOf(svg, "axis").setAttribute("d", `M${left} 8V${y(0)}H${w}` + [15, 30, 45, 60].map((d) => `M${x(d)} ${y(0)}v4`).join(""));
	for (const d of [0, 15, 30, 45, 60]) mark(x(d), h - 8, d + "°", d === 60 ? "end" : "middle");
	const step = high > 120 ? 50 : 25;
	for (let v = step; v < high; v += step) mark(left - 4, y(v) + 4, inch() ? (v / 25.4).toFixed(1) + " in" : v + " mm", "end");
	pathOf(svg, "other").setAttribute("d", [...others.values()].map(line).join(""));
	pathOf(svg, "known").setAttribute("d", known.map((b) => line(b.gz)).join(""));
	const ends = [...[...others].map(([name, g]) => [capital(name), g.at(-1)]), ...known.map((b, i) => [letter(i), b.gz.at(-1)])].filter(([, p]) => p).map(([words, p]) => ({ words, x: x(p[0]), y: y(p[1]) }));
	const column = Math.min(w - 34, Math.max(...ends.map((e) => e.x)) + 12), row = 12;
	for (const [i, e] of ends.sort((a, b) => a.y - b.y).entries()) e.at = Math.max(e.y, i ? ends[i - 1].at + row : 12);
	const over = ends.length ? Math.max(0, ends.at(-1).at - y(0) + 4) : 0; // a column that ends under the axis is moved up
	pathOf(svg, "lead").setAttribute("d", ends.map((e) => `M${e.x + 1} ${e.y}L${column - 2} ${e.at - over}`).join(""));
	for (const e of ends) mark(column, e.at - over + 4, e.words, "start");
	byId("known").textContent = "Dashed: canoes measured long ago. " + known.map((b, i) => `${letter(i)}: ${b.name}`).join("; ") + `. Each with ${shownMass(known[0].all_up_kg)} in all, floated by this program from their measured lines: no rule, but what people have paddled for a hundred years.`;
	pathOf(svg, "pin").setAttribute("d", line(under));
	pathOf(svg, "own").setAttribute("d", line(standing.gz));
	const here = heeled(standing);
	if (here && here[0] > 0) pathOf(svg, "here").setAttribute("d", `M${x(here[0])} ${y(0)}V${y(here[1])}`);
}
