// Paper: what is to be had of the boat as it now is, the same files as from the command line.
const files = [
	["Patterns, full size", "loft", [".pdf"]], ["Cutter, SVG", "loft", [".svg"]], ["Cutter, DXF", "loft", [".dxf"]],
	["Build book", "book", [".pdf"]], ["Every number", "loft", ["-numbers.json"]], ["Proof sheet", "proof", [".pdf"]], ["The design", "", []],
];

function buildFiles() {
	byId("files").replaceChildren(...files.map(([words, verb, only]) => {
		const b = document.createElement("button");
		b.type = "button"; b.textContent = words;
		b.onclick = () => make(b, verb, only);
		return b;
	}));
}

async function make(button, verb, only) {
	button.disabled = true;
	say("Making: " + button.textContent + " ...");
	const now = await nowDesign();
	let made = now.file && [now.file];
	if (!now.fault && verb) {
		const q = { verb, fields: [["paper", state.paper], ["units", state.units]], make: true, only };
		if (verb !== "proof") Object.assign(q, now.named);
		const a = await ask(q);
		made = a.files;
		now.fault = a.fault;
	}
	button.disabled = false;
	if (now.fault) { say(now.fault.says, true); return; }
	for (const f of made) save(f);
	say("Saved: " + made.map((f) => f.name).join(", "));
}

// nowDesign is the design with all changes: by its name while it is as it was shipped.
async function nowDesign() {
	const q = { ...lookQuestion(base, state, false), make: true }, a = await ask(q);
	if (a.fault) return { fault: a.fault };
	const file = a.files[0], asIs = shipped.includes(state.base) && Object.keys(state.set).length === 0;
	if (asIs) return { file, named: { names: [state.base] } };
	return { file, named: { names: [file.name], files: { [file.name]: textOf(file) } } };
}

const bytesOf = (data) => Uint8Array.from(atob(data), (c) => c.charCodeAt(0));
const textOf = (f) => new TextDecoder().decode(bytesOf(f.data));

function save(f) {
	const a = document.createElement("a");
	a.href = URL.createObjectURL(new Blob([bytesOf(f.data)]));
	a.download = f.name;
	a.click();
	setTimeout(() => URL.revokeObjectURL(a.href), 10000);
}
