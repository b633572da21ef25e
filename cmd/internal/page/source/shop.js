// Your wood, cost and hours: the engine's own lists, for the boards that are at hand.
let workshop = null; // what the engine said last, and for what

const workshopKey = () => JSON.stringify([state.base, state.name, state.text, state.people, state.set, state.units, state.skill, state.prices, state.table, state.boards]);

// askWorkshop asks once for what has not changed; null where it cannot be had, which has
// been said.
async function askWorkshop() {
	const key = workshopKey();
	if (workshop?.key === key) return workshop.numbers;
	say("Working it out ...");
	const now = await nowDesign();
	let a = now;
	if (!now.fault) {
		const fields = [["units", state.units], ...shopFields(), ...state.boards.map((b) => ["board", b])];
		a = await ask(withPrices({ verb: "workshop", ...now.named, fields, make: true }));
	}
	if (a.fault) { say(a.fault.says, true); return null; }
	say("");
	workshop = { key, numbers: a.numbers, files: a.files };
	return a.numbers;
}

// shopFields are the skill and the prices, where they are said; a design may say its skill.
const shopFields = (s = state) => [...(s.skill ? [["skill", s.skill]] : []), ["prices", s.prices === "own" ? ownPrices(s) : s.prices]];

// ownPrices is the name that the engine knows the builder's own price table by; no design
// opened here has a slash in its name.
const ownPrices = (s) => "prices/" + s.table.name;

// withPrices adds that table to a question.
const withPrices = (q) => (state.prices === "own" ? { ...q, files: { ...q.files, [ownPrices(state)]: state.table.text } } : q);


const chapterOf = (n, name) => n.chapters.find((c) => c.name === name)?.blocks ?? [];

function shopping() {
	byId("skill").onchange = (e) => change({ skill: e.target.value });
	byId("prices").onchange = (e) => {
		if (e.target.value !== "own" || state.table) { change({ prices: e.target.value }); return; }
		e.target.value = state.prices; byId("own-prices").click();
	};
	byId("own-prices").onchange = async (e) => {
		const f = e.target.files[0];
		if (f) change({ prices: "own", table: { name: f.name, text: await f.text() } });
		e.target.value = "";
	};
	byId("fill-in").onclick = async (e) => {
		e.target.disabled = true;
		const n = await askWorkshop();
		e.target.disabled = false;
		if (!n) return;
		if (state.prices === "own") save({ name: state.table.name, data: btoa(String.fromCharCode(...new TextEncoder().encode(state.table.text))) }); else save(workshop.files[0]);
		say(`Saved: ${state.prices === "own" ? state.table.name : workshop.files[0].name}. Put in what you are asked for, with any editor of plain text, and open it here.`);
	};
	byId("work-out").onclick = async (e) => {
		e.target.disabled = true;
		const n = await askWorkshop();
		e.target.disabled = false;
		if (n && workshop.key === workshopKey()) showWorked(n); // else it is of another boat by now
	};
}

function showWorked(n) {
	const open = [...byId("worked").querySelectorAll("details[open]")].map((d) => d.dataset.name);
	byId("worked").replaceChildren(...setBlocks(n.short), ...["Ripping plan", "Cut list", "Shopping list and cost", "Hours"].map((name) => {
		const d = made("details");
		d.dataset.name = name; d.open = open.includes(name);
		d.append(made("summary", name), ...setBlocks(chapterOf(n, name)));
		return d;
	}));
}

// showShop follows the state; what was worked out for another boat is taken away.
function showShop() {
	byId("skill").value = state.skill || shown?.skill || "average"; byId("prices").value = state.prices; byId("priced").textContent = state.prices === "own" ? `Your own prices, from ${state.table.name}.` : "The prices are invented, to compare boats by; ask where you buy, and put what you are asked into a table of your own.";
	if (workshop && workshop.key !== workshopKey()) byId("worked").replaceChildren();
	const key = JSON.stringify([state.boards, state.units, shown?.woods]);
	if (byId("boards").dataset.of === key) return;
	byId("boards").dataset.of = key;
	byId("boards").replaceChildren(...state.boards.map(boardRow), newBoard());
}

function boardRow(words, i) {
	const row = made("p", "", "row"), out = made("button", "Take out");
	out.type = "button"; out.ariaLabel = "Take out " + words;
	out.onclick = () => { change({ boards: state.boards.filter((_, k) => k !== i) }); byId("b-count").focus(); };
	row.append(made("span", words), out);
	return row;
}

// newBoard is a line for boards at hand, which the engine reads with their units.
function newBoard() {
	const form = made("form"), usual = inch() ? ["1", "", "8 ft", "6 in", "1 in"] : ["1", "", "2400 mm", "150 mm", "26 mm"];
	const fields = [["count", "Boards at hand: how many"], ["wood", "Wood"], ["long", "Length"], ["wide", "Width"], ["thick", "Thickness"]].map(([name, asks], i) => {
		const label = made("label"), field = made(name === "wood" ? "select" : "input");
		field.id = "b-" + name;
		if (name === "wood") field.append(...(shown?.woods ?? []).map((w) => new Option(w))); else field.value = usual[i];
		label.append(made("span", asks), field);
		return [label, field];
	});
	const add = made("button", "Add these boards");
	add.type = "submit";
	form.append(...fields.map((f) => f[0]), add);
	form.onsubmit = (e) => {
		e.preventDefault();
		const [n, wood, long, wide, thick] = fields.map((f) => f[1].value.trim());
		change({ boards: [...state.boards, `${n} of ${wood}, ${long} x ${wide} x ${thick}`] });
		byId("b-count").focus();
	};
	return form;
}
