// Paper: what is to be had of the boat as it now is, the same files as from the command line.
const files = [
	["Patterns, full size", "loft", [".pdf"]], ["Cutter, SVG", "loft", [".svg"]], ["Cutter, DXF", "loft", [".dxf"]],
	["Build book", "book", [".pdf"]], ["Every number", "loft", ["-numbers.json"]], ["The design", "", []], ["Everything as one zip", "parcel", []],
];

// paperFields are the fields of paper and printer that a verb has.
function paperFields(verb, s = state) {
	const out = [["paper", s.paper], ["units", s.units]];
	if (s.margins) out.push(["margins", s.margins]);
	if (verb === "loft" || verb === "parcel" || verb === "sheets") {
		if (s.across) out.push(["printed-across", s.across]);
		if (s.down) out.push(["printed-down", s.down]);
	}
	if (verb === "book" || verb === "parcel") out.push(...shopFields(s));
	return out;
}

function buildFiles() {
	byId("files").replaceChildren(...files.map(([words, verb, only]) => {
		const b = document.createElement("button");
		b.type = "button"; b.textContent = words;
		b.onclick = () => make(b, verb, only);
		return b;
	}));
}

async function make(button, verb, only) {
	button.disabled = true;
	say("Making: " + button.textContent + " ...");
	const all = await filesOf(verb, only);
	button.disabled = false;
	if (!all) return;
	for (const f of all) save(f);
	say("Saved: " + all.map((f) => f.name).join(", "));
}

// filesOf makes files of the boat as it now is; null where it cannot, which has been said.
async function filesOf(verb, only) {
	const now = await nowDesign();
	let a = now;
	if (!now.fault && verb) a = await ask(withPrices({ verb, fields: paperFields(verb), make: true, only, ...(verb === "proof" ? {} : now.named) }));
	if (a.fault) { say(a.fault.says, true); return null; }
	return verb ? a.files : [now.file];
}

// nowDesign is the design with all changes: by its name while it is as it was shipped.
async function nowDesign(s = state) {
	const from = await baseOf(s);
	if (!from) return { fault: { says: byId("status").textContent } };
	const q = { ...lookQuestion(from, s, false), make: true }, a = await ask(q);
	if (a.fault) return { fault: a.fault };
	const file = a.files[0], asIs = shipped.includes(s.base) && Object.keys(s.set).length === 0;
	if (asIs) return { file, named: { names: [s.base] } };
	return { file, named: { names: [file.name], files: { [file.name]: textOf(file) } } };
}

const bytesOf = (data) => Uint8Array.from(atob(data), (c) => c.charCodeAt(0));
const textOf = (f) => new TextDecoder().decode(bytesOf(f.data));

function save(f) {
	const a = document.createElement("a");
	a.href = URL.createObjectURL(new Blob([bytesOf(f.data)]));
	a.download = f.name;
	a.click();
	setTimeout(() => URL.revokeObjectURL(a.href), 10000);
}

// papering: the proof, the sheets as they come out, and what to tick when they are printed.
let sheets = null; // what the engine laid last, and for what
let laying = null; // what it was last asked to lay, and for what
let near = false; // whether the paper is in sight, or about to be
const sheetsKey = (s = state) => JSON.stringify([workshopKey(), s.paper, s.margins, s.across, s.down]);

function papering() {
	byId("size").onchange = (e) => change({ paper: e.target.value });
	byId("margins").onchange = (e) => change({ margins: e.target.value });
	byId("proof").onclick = (e) => make(e.target, "proof", [".pdf"]);
	byId("printed").onsubmit = keepPrinted;
	byId("show-sheets").onclick = async (e) => {
		e.target.disabled = true;
		while (await askSheets() && !showSheets()); // a boat that was changed meanwhile is laid anew
		e.target.disabled = false;
	};
	new IntersectionObserver((all) => { near = all.at(-1).isIntersecting; layAhead(); }, { rootMargin: "50%" }).observe(byId("paper"));
	byId("print").onclick = () => {
		const tick = [`Paper: ${byId("size").selectedOptions[0].textContent}, the same as in the tray.`, "Size or scale: 100 %, or Actual size. Never Fit, Shrink or Fill.",
			"One side of the paper only.", "Every page at its own way up: orientation Automatic.", "Sheet 1 first. Lay a steel rule on its scale bars before you print the rest."];
		byId("tick-list").replaceChildren(...tick.map((t) => made("li", t)));
		byId("ticks").showModal();
	};
	byId("print-not").onclick = () => byId("ticks").close();
	byId("print-go").onclick = async () => {
		byId("ticks").close();
		say("Making: Patterns ...");
		const all = await filesOf("loft", [".pdf"]);
		if (!all) return;
		const opened = open(URL.createObjectURL(new Blob([bytesOf(all[0].data)], { type: "application/pdf" })), "_blank");
		if (!opened) save(all[0]);
		say(opened ? "The patterns stand in a tab of their own: print them from there." : "Saved: " + all[0].name);
	};
}

async function askSheets(s = state) {
	const key = sheetsKey(s);
	if (sheets?.key === key) return sheets.numbers;
	say("Laying the sheets ...");
	const a = await laid(s, key);
	if (a.fault) { laying = null; say(a.fault.says, true); return null; }
	say("");
	sheets = { key, numbers: a.numbers };
	return a.numbers;
}

// laid asks for sheets, once for each kind of them.
function laid(s, key) {
	const work = async () => { const now = await nowDesign(s); return now.fault ? now : ask({ verb: "sheets", ...now.named, fields: paperFields("sheets", s) }); };
	if (laying?.key !== key) laying = { key, answer: work() };
	return laying.answer;
}

// layAhead lays the sheets of a boat that rests while whoever wants them is on the way there.
async function layAhead() {
	const key = sheetsKey(), mine = document.documentElement.dataset;
	if (!near || mine.whole !== "true" || sheets?.key === key) return;
	mine.laid = "false";
	await laid(state, key);
	if (key === sheetsKey()) mine.laid = "true";
}

// showSheets draws each sheet small; false where what is laid is of another boat or paper.
function showSheets() {
	if (sheets?.key !== sheetsKey()) return false;
	const n = sheets.numbers;
	showBars(n.bars);
	byId("laid").replaceChildren(...setBlocks(n.told));
	byId("sheets").replaceChildren(...n.sheets.map((s) => {
		const figure = made("figure"), svg = document.createElementNS(svgns, "svg"), { w_mm: w, h_mm: h } = n.paper;
		svg.setAttribute("viewBox", `0 ${-h} ${w} ${h}`);
		svg.setAttribute("role", "img"); svg.setAttribute("aria-label", "Sheet " + s.title);
		for (const [pen, runs] of Object.entries(s.lines)) pathOf(svg, pen).setAttribute("d", trace(runs));
		figure.append(svg, made("figcaption", s.title));
		return figure;
	}));
	return true;
}

const showBars = (bars) => { for (const way of ["across", "down"]) byId("bar-" + way).textContent = ` (drawn ${bars[way]})`; };

// keepPrinted keeps what the bars of the proof measure, as the engine reads it.
async function keepPrinted(e) {
	e.preventDefault();
	const n = await askSheets();
	if (!n) return;
	const read = (way) => {
		const t = byId(way).value.trim(), drawn = n.bars[way], unit = /^[\d.]+$/.test(t) ? " " + drawn.split(" ").at(-1) : "";
		return t === "" || / of /.test(t) ? t : `${t}${unit} of ${drawn}`;
	};
	const set = { across: read("across"), down: read("down") };
	if (!await askSheets({ ...state, ...set })) return; // it has been said what is wrong
	change(set);
	showSheets();
}

// showPaper follows the state; what was laid for other paper is taken away.
function showPaper() {
	byId("size").value = state.paper; byId("margins").value = state.margins;
	const key = JSON.stringify([state.across, state.down]);
	if (byId("printed").dataset.of !== key) { byId("across").value = state.across; byId("down").value = state.down; byId("printed").dataset.of = key; }
	byId("true").textContent = state.across || state.down ? "Kept: patterns are drawn so that they come out true on this printer. Print sheet 1 and measure it again." : "";
	if (sheets && sheets.key !== sheetsKey()) { byId("sheets").replaceChildren(); byId("laid").replaceChildren(); }
}
