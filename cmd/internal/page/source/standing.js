// How it stands: its curve of righting levers beside those of the shipped boats.
const others = new Map();

async function askOthers() {
	for (const name of shipped) {
		const a = await ask({ verb: "look", names: [name] });
		if (a.numbers) others.set(name, a.numbers.standing.gz);
	}
	if (shown) drawLevers(shown.standing);
}

function drawLevers(standing) {
	const svg = byId("levers"), w = 360, h = 190, left = 34, low = 24;
	const all = [standing.gz, ...others.values()].filter((g) => g && g.length);
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
	for (const [name, g] of others) { const p = g.at(-1); if (p) mark(x(p[0]) - 2, y(p[1]) - 5, name[0].toUpperCase() + name.slice(1), "end"); }
	pathOf(svg, "own").setAttribute("d", line(standing.gz ?? []));
}
