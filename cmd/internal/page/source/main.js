// What happens when: a change of the state is looked at at once, in few lines, and in
// full when nothing has changed for a moment.
let shown = null, busy = false, again = false, later = 0, looks = 0, base = null;
let notice = "", noticeWrong = false; // what stays to be read until something is changed

// lookQuestion asks for a boat: b is where it starts from, s what is changed of it.
function lookQuestion(b, s, whole) {
	const set = Object.entries(s.set).map(([k, v]) => [k, `${v} ${unitOf[k] ?? "mm"}`]);
	const fields = [["units", state.units], ["turn", String(state.turn)], ["rise", String(state.rise)], ...set];
	if (whole) fields.push(["whole", "true"]);
	return b.text ? { verb: "look", names: [b.name], files: { [b.name]: b.text }, fields } : { verb: "look", names: [b.name], fields };
}

// underSail asks for the sail too, if it is to be seen. While the boat is turned or changed it
// keeps its area.
function underSail(q, whole) {
	if (state.sail) q.fields.push(["rig", state.outfit.rig]);
	if (state.sail && !whole && shown?.sail?.rig === state.outfit.rig) q.fields.push(["area", shown.sail.area_m2 + "m2"]);
	return q;
}

function show(a) {
	if (a.fault) {
		if (!shown) { // a link that leads to no boat
			state = fresh();
			show(start.first);
			notice = `${a.fault.says}. This is ${shown.design.title} instead.`;
			noticeWrong = true;
			arrive();
		}
		say(notice || a.fault.says, true);
		wrongStands = false; // the next look may be a better one
		return;
	}
	shown = a.numbers;
	if (!wrongStands) say(notice, noticeWrong);
	drawAll();
	tell(shown);
	showMeasures(shown.measures);
	showShop();
	showBeside();
	document.documentElement.dataset.ready = "true";
}

// look draws the newest state; what came in between is passed over.
async function look(whole) {
	const mine = ++looks;
	showPaper();
	document.documentElement.dataset.whole = "false";
	clearTimeout(later);
	if (whole !== true) later = setTimeout(() => look(true), 250);
	if (busy) { again = true; return; }
	busy = true;
	const from = performance.now(), a = await ask(underSail(lookQuestion(base, state, whole === true), whole === true));
	busy = false;
	if (again) { again = false; if (!a.fault && whole !== true) show(a); look(); return; }
	show(a);
	document.documentElement.dataset.took = (performance.now() - from).toFixed(1);
	if (whole !== true) return;
	if (!dragging) keep(false);
	await lookAtPinned();
	if (mine !== looks) return;
	document.documentElement.dataset.whole = "true";
	layAhead();
}

// baseOf is the design that a boat of the state starts from; it is sized once. Undefined
// where it cannot be had, which has been said.
const sized = new Map();
async function baseOf(b) {
	if (b.base !== "people") return b.base === "file" ? { name: b.name, text: b.text } : { name: b.base, text: "" };
	const key = JSON.stringify(b.people);
	if (!sized.has(key)) {
		say("Sizing a boat for you ...");
		sized.set(key, ask(sizing(b.people)));
	}
	const a = await sized.get(key);
	if (!a.fault) return { name: a.files[0].name, text: textOf(a.files[0]) };
	sized.delete(key);
	refuse(a.fault);
	return undefined;
}

// arrive goes to the boat of the state.
async function arrive() {
	document.documentElement.dataset.whole = "false";
	byId("units").value = state.units; byId("base").value = state.base;
	fillForm(); showShop(); showPaper(); showEye(); showOutfit();
	const going = state, next = await baseOf(state);
	if (state !== going) return; // there is a newer one
	if (!next && !shown) { show({ fault: { says: byId("status").textContent } }); return; }
	if (!next) return;
	base = next;
	look();
	lookAlong();
	showView();
}

// goTo goes to a heading; the address holds the boat and stays.
function goTo(id) {
	byId(id).tabIndex = -1;
	byId(id).focus();
	byId(id).scrollIntoView();
}

function begin() {
	const pick = byId("base");
	for (const [value, words] of [["people", "to your measure"], ["brook", "Brook"], ["lake", "Lake"], ["river", "River"], ["file", "from a file"]]) pick.add(new Option(words, value));
	pick.onchange = () => {
		if (pick.value === "people") { byId("p-weight").focus(); pick.value = state.base; } else if (pick.value === "file") { byId("file").click(); pick.value = state.base; } else change({ base: pick.value, name: pick.value, set: {}, text: "", people: null });
	};
	byId("skip").onclick = (e) => { e.preventDefault(); byId("measures").querySelector("input")?.focus(); };
	byId("under-sail").onchange = (e) => change({ sail: e.target.checked });
	for (const a of document.querySelectorAll("nav a")) a.onclick = (e) => { e.preventDefault(); goTo(a.getAttribute("href").slice(1)); };
	byId("undo").onclick = () => history.back();
	byId("redo").onclick = () => history.forward();
	byId("units").onchange = (e) => change({ units: e.target.value });
	byId("file").onchange = async (e) => {
		const f = e.target.files[0];
		if (f) change({ base: "file", name: f.name, text: await f.text(), set: {}, people: null });
		e.target.value = "";
	};
	addEventListener("popstate", travelled);
	addEventListener("pagehide", () => remember("ribwright", encode(state)));
	turning(byId("quarter"));
	heeling();
	pinning(); shopping(); papering(); benching(); eyeing(); fittingOut(); comparing(); learning();
	state = remembered();
	keep(false);
	buildFiles();
	if (JSON.stringify(state) === JSON.stringify(fresh())) show(start.first);
	arrive().then(askOthers);
}
begin();
