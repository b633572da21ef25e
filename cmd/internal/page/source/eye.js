// The eye: the frame fair and with one fault, as it is seen from one place.
let looking = false, lookAgain = false;

function eyeing() {
	const put = (values, of) => change({ eye: { ...state.eye, ...values } }, of);
	byId("eye-open").ontoggle = lookAlong;
	byId("eye-stand").onchange = (e) => put({ stand: e.target.value }, "");
	byId("eye-fault").onchange = (e) => put({ fault: e.target.value }, "");
	byId("eye-size").oninput = (e) => { state.eye = { ...state.eye, size: Number(e.target.value) }; showEye(); lookAlong(); };
	byId("eye-size").onchange = () => change({}, "eye-size");
}

function showEye() {
	const { stand, fault, size } = state.eye, much = shownLength(size);
	byId("eye-stand").value = stand; byId("eye-fault").value = fault; byId("eye-size").value = size;
	byId("eye-much").textContent = much; byId("eye-size").setAttribute("aria-valuetext", much);
}

// lookAlong draws the newest state; what came in between is passed over.
async function lookAlong() {
	if (!byId("eye-open").open || !base) return;
	if (looking) { lookAgain = true; return; }
	looking = true;
	const { stand, fault, size } = state.eye, q = lookQuestion(base, state, false);
	q.verb = "sight";
	q.fields = [...q.fields.filter(([name]) => name !== "turn" && name !== "rise"), ["stand", stand], ["fault", fault], ["size", size + " mm"]];
	const a = await ask(q);
	looking = false;
	if (lookAgain) { lookAgain = false; lookAlong(); }
	if (a.fault) { say(a.fault.says, true); return; }
	byId("eye-says").textContent = a.numbers.says;
	for (const d of a.numbers.drawings) {
		const svg = byId("eye-" + d.name);
		svg.setAttribute("viewBox", "-42 -20 84 40");
		for (const pen of ["tick", "cut"]) pathOf(svg, pen).setAttribute("d", trace(d.lines[pen] ?? []));
	}
	document.documentElement.dataset.eye = [stand, fault, size].join();
}
