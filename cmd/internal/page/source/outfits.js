// Outfits on the boat as it now is, and boats in one another: the engine's own figure and
// report of each, as the command line has them.
let fitted = ""; // for what the report that stands was made

const outfitKey = () => JSON.stringify([workshopKey(), state.pin, state.outfit]);

function fittingOut() {
	const put = (values) => change({ outfit: { ...state.outfit, ...values } });
	for (const name of ["kind", "rig", "purpose", "beside"]) byId("outfit-" + name).onchange = (e) => put({ [name]: e.target.value });
	for (const box of byId("outfit-nest").querySelectorAll("input")) {
		box.onchange = () => put({ nest: [...byId("outfit-nest").querySelectorAll(":checked")].map((b) => b.value) });
	}
	byId("fit-out").onclick = async (e) => {
		e.target.disabled = true;
		say("Working it out ...");
		const key = outfitKey(), a = await askOutfit();
		e.target.disabled = false;
		if (a.fault) { say(a.fault.says, true); return; }
		say("");
		if (key !== outfitKey()) return; // it is of another boat by now
		fitted = key;
		byId("fitted").replaceChildren(...a.files.map(picture), ...setBlocks(a.told));
	};
}

// askOutfit asks for what is chosen: its figure and its report.
async function askOutfit() {
	const now = await nowDesign(), { kind, rig, purpose, beside, nest } = state.outfit;
	if (now.fault) return now;
	const along = kind === "pair" && beside ? [beside] : kind === "fleet" ? nest : [];
	const q = { verb: kind, names: [...now.named.names], files: { ...now.named.files }, fields: [["units", state.units], ["svg", "true"]], make: true, only: [".svg"], told: true };
	for (const name of along) {
		if (name !== "pinned") { q.names.push(name === "same" ? q.names[0] : name); continue; }
		if (!state.pin) return { fault: { says: "No boat is pinned; pin one first, or choose another." } };
		const b = await baseOf(state.pin), a = b && await ask({ ...lookQuestion(b, state.pin, false), make: true });
		if (!a) return { fault: { says: byId("status").textContent } };
		if (a.fault) return a;
		q.names.push("pinned/" + a.files[0].name); // no design opened here has a slash in its name
		q.files["pinned/" + a.files[0].name] = textOf(a.files[0]);
	}
	if (kind === "sail") q.fields.push(["rig", rig]);
	if (kind === "pair") q.fields.push(["purpose", purpose]);
	return ask(q);
}

// picture shows a figure, with the words for those who cannot see it that stand in it.
function picture(f) {
	const img = made("img", "", "drawn"), svg = textOf(f);
	img.src = "data:image/svg+xml," + encodeURIComponent(svg);
	img.alt = new DOMParser().parseFromString(svg, "image/svg+xml").querySelector("desc")?.textContent || f.says;
	return img;
}

// showOutfit follows the state; what was worked out for another boat is taken away.
function showOutfit() {
	for (const name of ["kind", "rig", "purpose", "beside"]) byId("outfit-" + name).value = state.outfit[name];
	for (const e of document.querySelectorAll("[data-outfit]")) e.hidden = e.dataset.outfit !== state.outfit.kind;
	for (const box of byId("outfit-nest").querySelectorAll("input")) box.checked = state.outfit.nest.includes(box.value);
	if (fitted !== outfitKey()) byId("fitted").replaceChildren();
}
