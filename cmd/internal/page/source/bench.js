// The bench: big letters, one step or one rib at a time, with ticks that stay on the
// device. The screen stays on while it is looked at, where the browser can.
let place = { tab: "steps", steps: 0, ribs: 0, card: 0 }, awake = null;
const tabs = ["steps", "ribs", "card"];
const ticked = () => { try { return JSON.parse(recall("ribwright-ticks") || "{}"); } catch { return {}; } };

function benching() {
	try { place = { ...place, ...JSON.parse(recall("ribwright-bench") || "{}") }; } catch { /* as new */ }
	byId("to-bench").onclick = () => change({ view: "bench" });
	byId("from-bench").onclick = () => change({ view: "boat" });
	for (const tab of tabs) byId("tab-" + tab).onclick = () => turnPage(tab, place[tab]);
	byId("bench-before").onclick = () => turnPage(place.tab, place[place.tab] - 1);
	byId("bench-next").onclick = () => turnPage(place.tab, place[place.tab] + 1);
	document.addEventListener("visibilitychange", stayAwake);
}

function turnPage(tab, to) {
	place = { ...place, tab, [tab]: to };
	remember("ribwright-bench", JSON.stringify(place));
	if (workshop) showBench(workshop.numbers);
	byId("bench").scrollIntoView();
}

// showView goes to the boat or to the bench, as the state says.
async function showView() {
	const bench = state.view === "bench", came = bench === byId("bench").hidden;
	document.body.dataset.view = bench ? "bench" : "boat";
	byId("bench").hidden = !bench;
	stayAwake();
	if (!bench && came) byId("to-bench").focus();
	if (!bench) return;
	const n = await askWorkshop();
	if (!n || state.view !== "bench") return;
	showBench(n);
	if (came) byId("from-bench").focus();
}

// stepsOf parts the order of work at its sections.
function stepsOf(n) {
	const out = [];
	for (const b of chapterOf(n, "Order of work")) {
		if (b.kind === "heading") out.push({ name: b.says, blocks: [] }); else out.at(-1)?.blocks.push(b);
	}
	return out;
}

// pagesOf are the pages of a tab, each with what heads it and what stands on it.
async function pagesOf(n, tab) {
	if (tab === "steps") return stepsOf(n).map((s) => ({ head: s.name, of: "Step", set: () => step(n, s) }));
	if (tab === "ribs") return n.cards.map((c) => ({ head: "Rib " + c.name, of: "Rib", set: () => ribCard(c) }));
	const asked = await askBlank(n.design.slug);
	return asked && asked.ribs.map((r) => ({ head: "Measure rib " + r.rib, of: "Rib", set: () => measureCard(n, r) }));
}

async function showBench(n) {
	const { tab } = place, all = await pagesOf(n, tab);
	if (!all || tab !== place.tab) return; // it has been said why, or there is a newer one
	const at = Math.max(0, Math.min(all.length - 1, place[tab])), page = all[at];
	place[tab] = at;
	for (const t of tabs) byId("tab-" + t).ariaPressed = String(t === tab);
	byId("bench-before").disabled = at === 0;
	byId("bench-next").disabled = at >= all.length - 1;
	byId("bench-place").textContent = `${page.of} ${at + 1} of ${all.length}` + (tab === "steps" ? "" : ". M stands in the middle, F1 and on are forward of it, A1 and on aft.");
	byId("bench-page").replaceChildren(made("h2", page.head), ...page.set());
	document.documentElement.dataset.bench = tab + at;
}

// step sets one step; what is done in it is ticked off.
function step(n, s) {
	return s.blocks.map((b) => {
		if (b.kind === "list") return ticks(n.design.slug, s.name.replace(/,[^,]*$/, ""), b.items);
		if (b.kind !== "table") return setters[b.kind](b);
		const list = made("dl");
		for (const [head, says] of b.rows ?? []) list.append(made("dt", head), made("dd", says));
		return list;
	});
}

// ticks are kept by what is to be done: an act that reads otherwise is to be done anew.
function ticks(slug, name, items) {
	const list = made("ul", "", "ticks");
	list.append(...items.map((words) => {
		const li = made("li"), label = made("label"), box = made("input"), key = name + ": " + words;
		box.type = "checkbox"; box.checked = Boolean(ticked()[slug]?.includes(key));
		box.onchange = () => {
			const all = ticked(), own = (all[slug] ?? []).filter((k) => k !== key);
			all[slug] = box.checked ? [...own, key] : own;
			remember("ribwright-ticks", JSON.stringify(all));
		};
		label.append(box, made("span", words));
		li.append(label);
		return li;
	}));
	return list;
}

// ribCard sets the figures of one rib under the titles of their tables.
function ribCard(c) {
	const out = [];
	let table = null;
	for (const f of c.facts) {
		if (/^\.+$/.test(f.says)) continue; // a place to write on paper; here are the measures
		if (f.table !== table) { out.push(made("h3", f.table), made("dl", "", "figures")); table = f.table; }
		const long = f.says.length > 16 ? "long" : "";
		out.at(-1).append(made("dt", f.head, long), made("dd", f.says, long));
	}
	return out;
}

async function stayAwake() {
	const wanted = state.view === "bench" && document.visibilityState === "visible";
	let says = "";
	if (!wanted) { awake?.release(); awake = null; } else if (!awake || awake.released) {
		try { awake = await navigator.wakeLock.request("screen"); } catch { says = "This browser lets the screen go dark; set the phone to stay on."; }
	}
	byId("awake").textContent = says;
}
