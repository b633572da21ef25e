// What builds say, for whoever teaches: cards, feedback and tables are dropped, and the
// engine proposes lines, each with its evidence. Files stay in this tab alone.
let dropped = new Map(), proposed = [];

function learning() {
	for (const name of ["pack", "solo", "tandem"]) byId("learn-family").add(new Option(name));
	byId("builds").onchange = async (e) => {
		for (const f of e.target.files) dropped.set(f.name, await f.text());
		e.target.value = "";
		showDropped();
	};
	byId("learn").onclick = async (e) => {
		e.target.disabled = true;
		await learn();
		e.target.disabled = false;
	};
}

function showDropped() {
	byId("dropped").replaceChildren(...[...dropped.keys()].map((name) => {
		const li = made("li", "", "row"), out = made("button", "Take out");
		out.type = "button"; out.ariaLabel = "Take out " + name;
		out.onclick = () => { dropped.delete(name); showDropped(); byId("builds").focus(); };
		li.append(made("span", name), out);
		return li;
	}));
	byId("learned").replaceChildren(); byId("learned-files").replaceChildren();
	delete byId("learned").dataset.builds;
	byId("learn").disabled = dropped.size === 0;
}

// learn asks what the files say. A card that no table lists is of the boat on the page.
async function learn() {
	say("Reading " + (dropped.size === 1 ? "1 file" : dropped.size + " files") + " ...");
	const now = await nowDesign(), mine = "this boat.toml";
	if (now.fault) { say(now.fault.says, true); return; }
	const own = now.named.files ? { of: mine, files: { [mine]: Object.values(now.named.files)[0] } } : { of: now.named.names[0], files: {} };
	const fields = [["of", own.of], ["use", byId("learn-family").value], ["units", state.units], ["date", new Date().toISOString().slice(0, 10)]];
	if (byId("learn-check").value) fields.push(["check", byId("learn-check").value]);
	const a = await ask({ verb: "learn", names: [...dropped.keys()].filter((n) => !n.toLowerCase().endsWith(".toml")), files: { ...Object.fromEntries(dropped), ...own.files }, fields, told: true, make: true });
	if (a.fault) { say(a.fault.says, true); return; }
	say("");
	proposed = a.files ?? [];
	fold(byId("learned"), a.told, true);
	byId("learned").dataset.builds = a.numbers.builds;
	byId("learned-files").replaceChildren(...proposed.map((f) => {
		const b = made("button", "Save " + f.name);
		b.type = "button";
		b.onclick = () => { save(f); say("Saved: " + f.name); };
		return b;
	}));
}
