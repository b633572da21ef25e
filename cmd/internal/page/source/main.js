// What happens when: a change of the state is looked at at once, in few lines, and in
// full when nothing has changed for a moment.
let shown = null, busy = false, again = false, later = 0, base = null;

function lookQuestion(whole) {
	const set = Object.entries(state.set).map(([k, mm]) => [k, mm + " mm"]);
	const fields = [["units", state.units], ["turn", String(state.turn)], ["rise", String(state.rise)], ...set];
	if (whole) fields.push(["whole", "true"]);
	return base?.text ? { verb: "look", names: [base.name], files: { [base.name]: base.text }, fields } : { verb: "look", names: [state.base], fields };
}

function show(a) {
	if (a.fault) { say(a.fault.says, true); return; }
	shown = a.numbers;
	say("");
	const long = shown.measures.find((m) => m.name === "length").now_mm * 0.05;
	for (const d of shown.drawings) draw(d, long);
	tell(shown);
	showMeasures(shown.measures);
	drawLevers(shown.standing);
	document.documentElement.dataset.ready = "true";
}

// look draws the newest state; what came in between is passed over.
async function look(whole) {
	clearTimeout(later);
	later = setTimeout(() => look(true), 250);
	if (whole === true) clearTimeout(later);
	if (busy) { again = true; return; }
	busy = true;
	const at = performance.now(), a = await ask(lookQuestion(whole === true));
	busy = false;
	if (again) { again = false; if (!a.fault && whole !== true) show(a); look(); return; }
	show(a);
	document.documentElement.dataset.took = (performance.now() - at).toFixed(1);
	document.documentElement.dataset.whole = String(whole === true);
	if (!dragging) keep();
}

// arrive goes to the boat of the state.
async function arrive() {
	keep();
	byId("units").value = state.units; byId("size").value = state.paper;
	byId("base").value = state.base;
	const key = JSON.stringify([state.base, state.people, state.text]);
	if (base?.key !== key) {
		let next = { key, name: state.name, text: state.base === "file" ? state.text : "" };
		if (state.base === "people") {
			say("Sizing a boat for you ...");
			const a = await ask(sizing(state.people));
			if (a.fault) { say(a.fault.says, true); return; }
			const f = a.files[0];
			next = { key, name: f.name, text: new TextDecoder().decode(bytesOf(f.data)) };
		}
		base = next;
	}
	look();
}

function begin() {
	const pick = byId("base");
	for (const [value, words] of [["people", "to your measure"], ["brook", "Brook"], ["lake", "Lake"], ["river", "River"], ["file", "from a file"]]) pick.add(new Option(words, value));
	pick.onchange = () => {
		if (pick.value === "people") { byId("p-weight").focus(); pick.value = state.base; } else if (pick.value === "file") { byId("file").click(); pick.value = state.base; } else change({ base: pick.value, set: {}, text: "", people: null });
	};
	byId("undo").onclick = () => step(past, future);
	byId("redo").onclick = () => step(future, past);
	byId("units").onchange = (e) => { change({ units: e.target.value }); buildForm(); };
	byId("size").onchange = (e) => change({ paper: e.target.value });
	byId("file").onchange = async (e) => {
		const f = e.target.files[0];
		if (f) change({ base: "file", name: f.name, text: await f.text(), set: {}, people: null });
		e.target.value = "";
	};
	addEventListener("hashchange", () => { const s = decode(location.hash); if (s) { state = s; arrive(); } });
	turning(byId("quarter"));
	state = remembered();
	buildForm();
	buildFiles();
	if (JSON.stringify(state) === JSON.stringify(fresh())) show(start.first);
	arrive().then(askOthers);
}
begin();
