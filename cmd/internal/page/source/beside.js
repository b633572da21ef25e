// A pinned boat: drawn under the one that changes, with its figures beside.
let pinned = null; // what the engine said of it, and from where it is seen

function pinning() {
	byId("pin").onclick = () => change({ pin: pinOf(state) });
	byId("unpin").onclick = () => { change({ pin: null }); byId("pin").focus(); };
}

const pinOf = (s) => ({ base: s.base, name: s.name, text: s.text, people: s.people, set: s.set });

// lookAtPinned asks for the pinned boat when it, or the place it is seen from, is new.
async function lookAtPinned() {
	const { pin, turn, rise } = state, key = JSON.stringify([pin, state.units, turn, rise]);
	if (pin && pinned?.key !== key) {
		const b = await baseOf(pin), a = b && await ask(lookQuestion(b, pin, false));
		if (a?.fault) say("The pinned boat: " + a.fault.says, true);
		pinned = a?.numbers ? { key, numbers: a.numbers, turn, rise } : null;
	}
	if (!pin) pinned = null;
	drawAll();
	showBeside();
}

// showBeside sets the figures of both side by side.
function showBeside() {
	const there = Boolean(state.pin && pinned);
	byId("beside").hidden = !there;
	byId("unpin").disabled = !state.pin;
	drawLevers(shown.standing);
	followMoved();
	if (!there) return;
	const a = figures(shown), b = figures(pinned.numbers);
	byId("beside").tBodies[0].replaceChildren(...[...a.keys()].map((name) => {
		const row = document.createElement("tr"), head = document.createElement("th");
		head.scope = "row"; head.textContent = name;
		row.append(head);
		for (const value of [a.get(name), b.get(name) ?? "none"]) row.insertCell().textContent = value;
		row.classList.toggle("differs", a.get(name) !== b.get(name));
		return row;
	}));
}

// figures are those that two boats are compared by, as they are read.
function figures(n) {
	const s = n.standing, best = s.gz.reduce((a, p) => (p[1] > a[1] ? p : a), [0, 0]);
	const out = new Map(n.measures.map((m) => [m.name[0].toUpperCase() + m.name.slice(1), shownMeasure(m.now, m)]));
	out.set("Floats deep", shownLength(s.draft_mm)).set("Side over the water", shownLength(s.freeboard_min_mm));
	if (s.gz.length > 1) out.set("Greatest righting lever", `${shownLength(best[1])} at ${Math.round(best[0])}°`);
	return out.set("Water comes in at", s.flooding_deg === null ? "not found" : `${Math.round(s.flooding_deg)}° of heel`);
}
