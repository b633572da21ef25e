// Drawings: the engine's lines, put on the screen as they are.
const svgns = "http://www.w3.org/2000/svg";

function pathOf(svg, kind) {
	let p = svg.querySelector("path." + kind);
	if (!p) {
		p = document.createElementNS(svgns, "path");
		p.setAttribute("class", kind);
		svg.append(p);
	}
	return p;
}

// trace makes path data of runs of x and y; y is up in drawings and down on screens.
function trace(runs) {
	let d = "";
	for (const r of runs) {
		for (let i = 0; i < r.length; i += 2) d += (i ? "L" : "M") + r[i] + " " + -r[i + 1];
	}
	return d;
}

const lengthOf = (n) => n.measures.find((m) => m.name === "length").now;

// drawAll draws the boat, and under it the pinned one where there is one. The view that
// turns shows the pinned one when both are seen from the same place.
function drawAll() {
	const long = Math.max(lengthOf(shown), pinned ? lengthOf(pinned.numbers) : 0) * 0.05;
	byId("under-sail").checked = state.sail;
	byId("aloft").textContent = state.sail && shown.sail ? shown.sail.says + ". What wind it bears, and other kinds of sail, stand under Outfits." : "";
	for (const d of shown.drawings) {
		const under = pinned?.numbers.drawings.find((p) => p.name === d.name);
		const seen = under && (d.name !== "quarter" || (pinned.turn === state.turn && pinned.rise === state.rise));
		draw(d, seen ? under : null, long);
	}
}

function draw(drawing, under, long) {
	const svg = byId(drawing.name);
	if (!svg) return;
	const outline = under ? [under.lines.cut, under.lines.mark].flatMap((runs) => runs ?? []) : [];
	pathOf(svg, "pin").setAttribute("d", trace(outline));
	for (const pen of ["tick", "mark", "cut", "center", "guide"]) pathOf(svg, pen).setAttribute("d", trace(drawing.lines[pen] ?? []));
	const head = Math.max(long * 0.27, (shown.sail?.head_mm ?? 0) * 0.05 + 3), air = 3, boxes = [drawing, under ?? drawing].map((d) => d.box_mm), side = (i, of) => of(boxes[0][i], boxes[1][i]);
	const x0 = side(0, Math.min), y0 = side(1, Math.min), x1 = side(2, Math.max), y1 = side(3, Math.max);
	// The view that turns keeps its frame, or the boat would grow and shrink.
	const box = drawing.name === "quarter" ? [-long * 0.53, -head, long * 1.06, head + long * 0.23] : [x0 - air, -y1 - air, x1 - x0 + 2 * air, y1 - y0 + 2 * air];
	svg.setAttribute("viewBox", box.map((v) => v.toFixed(1)).join(" "));
}

// turning: under the finger, and with the arrow keys.
function turning(svg) {
	let from = null;
	svg.addEventListener("pointerdown", (e) => { from = { x: e.clientX, y: e.clientY, turn: state.turn, rise: state.rise }; svg.setPointerCapture(e.pointerId); });
	svg.addEventListener("pointermove", (e) => {
		if (from) turnTo(from.turn - (e.clientX - from.x) * 0.4, from.rise + (e.clientY - from.y) * 0.3);
	});
	for (const end of ["pointerup", "pointercancel"]) svg.addEventListener(end, () => { from = null; });
	svg.addEventListener("keydown", (e) => {
		const [t, r] = { ArrowLeft: [-5, 0], ArrowRight: [5, 0], ArrowUp: [0, 5], ArrowDown: [0, -5] }[e.key] ?? [0, 0];
		if (t || r) { e.preventDefault(); turnTo(state.turn + t, state.rise + r); }
	});
}

function turnTo(turn, rise) {
	state.turn = Math.round(((turn % 360) + 360) % 360);
	state.rise = Math.round(Math.min(85, Math.max(-30, rise)));
	wrongStands = false;
	look();
}
