// The card of measures at the bench: what the tape reads of each rib is typed, stays on the
// device, and the engine says what to do with that rib and with those still to set.
let blank = null; // what a card asks of this boat, and for what

const cards = () => { try { return JSON.parse(recall("ribwright-cards") || "{}"); } catch { return {}; } };
const asksOf = { beam: "Beam", straightedge: "Depth, from the straightedge", depth: "Depth of the rib", blank: "Blank, as cut", free_width: "Free width, cold", hot_width: "Held hot at", bilge_port: "Bilge to port", bilge_starboard: "Bilge to starboard", moisture_percent: "Moisture, percent", steam_minutes: "Steam, minutes" };

// cardOf is what is typed of a boat; its units are those in which it was begun.
function cardOf(slug) {
	const c = cards()[slug];
	return c && Object.keys(c.cells).length ? c : { units: state.units, cells: {} };
}

function keepCard(slug, c) { remember("ribwright-cards", JSON.stringify({ ...cards(), [slug]: c })); }

// askBlank asks what the card has to be filled; null where it cannot, which has been said.
async function askBlank(slug) {
	const { units } = cardOf(slug), key = JSON.stringify([workshopKey(), units]);
	if (blank?.key === key) return blank;
	const now = await nowDesign(), a = now.fault ? now : await ask({ verb: "built", ...now.named, fields: [["units", units]], told: true });
	if (a.fault) { say(a.fault.says, true); return null; }
	blank = { key, units, how: a.told, columns: a.numbers.columns, ribs: a.numbers.ribs };
	return blank;
}

// tableOf is a card as the table that the command line reads; "" where nothing is typed.
function tableOf(c) {
	const names = Object.keys(c.cells).filter((r) => Object.values(c.cells[r]).some((v) => v !== ""));
	if (names.length === 0) return "";
	const heads = headsOf(c);
	return [heads, ...names.map((r) => heads.map((h) => (h === "rib" ? r : c.cells[r][h] ?? "")))].map((line) => line.join(",") + "\n").join("");
}

// headsOf are the columns that the card asks for, and others that one has which was opened.
const headsOf = (c) => [...new Set([...blank.columns, ...Object.values(c.cells).flatMap(Object.keys)])];

// askBuilt asks what the measures of a table mean.
async function askBuilt(table, more = {}, fields = []) {
	const now = await nowDesign();
	if (now.fault) return now;
	const { names, files } = now.named;
	return ask({ verb: "built", names: [...names, "measures.csv"], files: { ...files, "measures.csv": table }, fields: [["units", state.units], ...fields], told: true, ...more });
}

// measureCard sets one rib to be measured, and below it what its measures mean.
function measureCard(n, rib) {
	const slug = n.design.slug, c = cardOf(slug), form = made("form", "", "taken"), out = made("div");
	out.id = "rib-says"; out.role = "status";
	for (const head of headsOf(c).slice(1)) form.append(cell(slug, rib, head, c));
	form.onsubmit = (e) => { e.preventDefault(); judgeRib(slug, rib); };
	form.onchange = () => judgeRib(slug, rib);
	const how = made("details");
	how.append(made("summary", "How each is measured"), ...setBlocks(blank.how));
	queueMicrotask(() => judgeRib(slug, rib));
	return [form, out, how, cardFiles(slug), made("div", "", "whole")];
}

// cell is one measure of a rib, with what the drawing has for it.
function cell(slug, rib, head, c) {
	const label = made("label"), box = made("input"), name = head.replace(/_(mm|in)$/, ""), unit = head.endsWith("_in") ? "in" : "mm";
	const drawn = rib[name.replace(/_(port|starboard)$/, "") + "_mm"];
	box.name = head; box.id = "c-" + name;
	if (name === "broken") {
		box.type = "checkbox"; box.checked = Boolean(c.cells[rib.rib]?.broken);
		label.append(made("span", "It broke"), box);
	} else {
		box.inputMode = "decimal"; box.autocomplete = "off"; box.value = c.cells[rib.rib]?.[head] ?? "";
		const words = made("span", asksOf[name] + (name in plainFigures ? "" : ", " + unit));
		if (drawn !== undefined && drawn !== null) words.append(made("small", "drawn " + (unit === "in" ? inches(Math.round(drawn / 25.4 * 16)) : Math.round(drawn)) + " " + unit));
		label.append(words, box);
	}
	box.oninput = () => {
		const all = cardOf(slug), value = box.type === "checkbox" ? (box.checked ? "yes" : "") : box.value.trim();
		all.cells[rib.rib] = { ...all.cells[rib.rib], [head]: value };
		keepCard(slug, all);
	};
	return label;
}
const plainFigures = { moisture_percent: 1, steam_minutes: 1 };

let judging = 0;
async function judgeRib(slug, rib) {
	const mine = ++judging, table = tableOf(cardOf(slug)), out = byId("rib-says"), whole = byId("bench-page").querySelector(".whole");
	if (!table) { out.replaceChildren(made("p", "Type what you have measured, of any ribs.", "note")); whole.replaceChildren(); return; }
	const a = await askBuilt(table);
	if (mine !== judging || byId("rib-says") !== out) return; // there is a newer one
	delete out.dataset.verdict;
	if (a.fault) { out.replaceChildren(made("p", a.fault.says, "wrong")); return; }
	const is = a.numbers.ribs.find((r) => r.rib === rib.rib), toSet = a.numbers.remaining.find((r) => r.rib === rib.rib);
	const said = [...(is ? [made("p", verdictOf(is), "verdict"), made("p", offOf(is))] : []), ...(toSet ? [made("p", settingOf(toSet))] : [])];
	out.replaceChildren(...(said.length ? said : [made("p", "Nothing is typed of this rib.", "note")]));
	if (is) out.dataset.verdict = is.verdict;
	fold(whole, a.told);
}

const verdictOf = (r) => capital(r.verdict) + (r.do ? ": " + r.do : "") + ".";

function offOf(r) {
	const off = [["beam", r.beam_off_mm], ["depth", r.depth_off_mm], ["free width", r.free_width_off_mm]].filter(([, v]) => v !== null);
	if (off.length === 0) return "";
	return "Off the drawing: " + off.map(([name, v]) => `${name} ${v > 0 ? "+" : ""}${shownLength(v)}`).join(", ") + ".";
}

function settingOf(r) {
	const hot = r.hot_width_mm > 0 ? ` Held hot it is ${shownLength(r.hot_width_mm)} between the heads, give or take ${shownLength(r.hot_width_plus_minus_mm)}.` : "";
	return `Still to set: cut it ${shownLength(r.blank_mm)} long, ${shownLength(r.length_mm)} from shoulder to shoulder.${hot} Free it stands at ${shownLength(r.free_width_mm)}.`;
}

// cardFiles are the card on paper and as a table, and what is made of it.
function cardFiles(slug) {
	const row = made("div", "", "row"), open = made("label", "Open a card", "button"), file = made("input");
	const button = (words, act) => {
		const b = made("button", words);
		b.type = "button";
		b.onclick = async () => { b.disabled = true; await act(); b.disabled = false; };
		return b;
	};
	file.type = "file"; file.accept = ".csv"; file.id = "open-card";
	file.onchange = async () => { if (file.files[0]) await openCard(slug, await file.files[0].text()); };
	open.append(file);
	row.append(button("Print the card", () => saveMade({ verb: "built", fields: paperFields("built"), make: true, only: [".pdf"] })), open,
		button("Save the card", () => {
			const table = tableOf(cardOf(slug));
			if (!table) { nothingTyped(); return; }
			save({ name: slug + "-measures.csv", data: btoa(table) });
			say("Saved: " + slug + "-measures.csv");
		}),
		button("Save the boat as built", () => saveBuilt(slug, ".toml")), button("Save what it says of the formulas", () => saveBuilt(slug, "feedback.csv", [["feedback", "true"]])),
		button("See it over the drawing", () => overDrawing(slug)));
	return row;
}

const nothingTyped = () => say("Nothing is typed yet.", true);

// saveMade saves what a question about this boat makes.
async function saveMade(question) {
	const now = await nowDesign(), a = now.fault ? now : await ask({ ...question, ...now.named });
	if (a.fault) { say(a.fault.says, true); return; }
	for (const f of a.files) save(f);
	say("Saved: " + a.files.map((f) => f.name).join(", "));
}

async function madeOf(slug, end, fields) {
	const table = tableOf(cardOf(slug));
	if (!table) { nothingTyped(); return null; }
	const a = await askBuilt(table, { make: true, only: [end] }, fields);
	if (a.fault) { say(a.fault.says, true); return null; }
	if (!a.files?.length) { say("The ribs are so far off that no design comes near them.", true); return null; }
	return a.files[0];
}

async function saveBuilt(slug, end, fields = []) {
	const f = await madeOf(slug, end, fields);
	if (f) { save(f); say("Saved: " + f.name); }
}

// overDrawing goes to the boat as built, with the drawing pinned under it.
async function overDrawing(slug) {
	const f = await madeOf(slug, ".toml", []);
	if (f) change({ pin: pinOf(state), base: "file", name: f.name, text: textOf(f), set: {}, people: null, view: "boat" });
}

// openCard takes a table that the engine understands into the card.
async function openCard(slug, text) {
	const a = await askBuilt(text);
	if (a.fault) { say(a.fault.says, true); return; }
	const lines = text.replace(/^\uFEFF/, "").split(/\r?\n/).map((l) => l.trim()).filter((l) => l && !l.startsWith("#")), mark = [",", ";", "\t"].find((m) => lines[0].includes(m)) ?? ",";
	const rows = lines.map((l) => l.split(mark).map((v) => v.trim().replace(/^"(.*)"$/, "$1").trim())), heads = rows[0].map((h) => h.toLowerCase());
	const named = (name) => blank.ribs.find((r) => r.rib.toLowerCase() === name.toLowerCase())?.rib, cells = {};
	for (const row of rows.slice(1)) {
		const rib = named(row[heads.indexOf("rib")] ?? "");
		if (rib) cells[rib] = Object.fromEntries(heads.map((h, i) => [h, row[i] ?? ""]).filter(([h, v]) => h && h !== "rib" && v && v !== "-" && !(h === "broken" && /^(no|n|false|0)$/i.test(v))));
	}
	keepCard(slug, { units: heads.some((h) => h.endsWith("_in")) ? "imperial" : "metric", cells });
	say("");
	showBench(workshop.numbers);
}
