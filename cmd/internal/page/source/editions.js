// Two editions: the pinned boat is the older one, drawn under the other; here is what
// moved between them, what to print again and what of the cut wood still serves.
let moved = null; // what the engine said last, and of what

const movedKey = () => JSON.stringify([state.pin, sheetsKey(), state.cut]);

function comparing() {
	byId("under").onchange = async (e) => {
		const f = e.target.files[0];
		if (f) change({ pin: { base: "file", name: f.name, text: await f.text(), people: null, set: {} } });
		e.target.value = "";
	};
	byId("cut-parts").onsubmit = (e) => { e.preventDefault(); change({ cut: byId("cut").value.trim() }); showMoved(); };
	byId("since").onclick = saveSince;
	byId("kept").onclick = () => { save(moved.kept); say("Saved: " + moved.kept.name); };
}

// bothDesigns names the two for a question, the older one first; null where one cannot be
// had, which has been said.
async function bothDesigns() {
	const then = await nowDesign(state.pin), now = await nowDesign();
	for (const d of [then, now]) if (d.fault) { say(d.fault.says, true); return null; }
	const older = then.named.files ? { names: ["older.toml"], files: { "older.toml": Object.values(then.named.files)[0] } } : then.named;
	return { names: [...older.names, ...now.named.names], files: { ...older.files, ...now.named.files } };
}

async function showMoved() {
	if (!state.pin) { say("Pin the older boat first, or lay a design under this one.", true); return; }
	const key = movedKey(), button = byId("cut-parts").querySelector("button");
	say("Comparing ...");
	button.disabled = true;
	const both = await bothDesigns(), fields = [...paperFields("compare"), ["prices", state.prices]];
	if (state.cut) fields.push(["cut", state.cut]);
	const a = both && await ask({ verb: "compare", ...both, fields, told: true, make: true });
	button.disabled = false;
	if (!a) return;
	if (a.fault) { say(a.fault.says, true); return; }
	say("");
	moved = { key, kept: a.files?.[0] };
	fold(byId("moved"), a.told, true);
	followMoved();
	byId("moved").dataset.changes = a.numbers.changes.length;
}

// followMoved takes away what was said of other boats.
function followMoved() {
	if (byId("cut").dataset.of !== state.cut) { byId("cut").value = state.cut; byId("cut").dataset.of = state.cut; }
	if (moved && moved.key !== movedKey()) { moved = null; byId("moved").replaceChildren(); delete byId("moved").dataset.changes; }
	byId("since").hidden = !moved;
	byId("kept").hidden = !moved?.kept;
}

async function saveSince(e) {
	e.target.disabled = true;
	say("Making: the changed sheets ...");
	const both = await bothDesigns(), [older, newer] = both?.names ?? [];
	const a = both && await ask({ verb: "loft", names: [newer], files: both.files, fields: [...paperFields("loft"), ["since", older]], make: true, only: [".pdf"] });
	e.target.disabled = false;
	if (!a) return;
	if (a.fault) { say(a.fault.says, true); return; }
	save(a.files[0]);
	say("Saved: " + a.files[0].name);
}
