// Your measure: who the boat is for. The engine reads what is typed, with its unit.
const questions = [
	["weight", "Your weight", "70 kg", "Dressed, with a life jacket. It decides how much boat you need.", "154 lb"],
	["height", "Your height", "172 cm", "It decides where the gunwales come and how high your weight lies.", "5 ft 8 in"],
	["span", "Arm span, if you know it", "", "Fingertip to fingertip. You must reach over the gunwales; left empty, it is estimated from your height.", ""],
	["posture", "How you sit", "", "Kneeling is higher and surer in waves; sitting low is easier on the knees.", "", ["", "either"], ["kneeling", "kneeling"], ["sitting", "sitting"]],
	["use", "The boat", "pack", "One person and a day bag, one with packs, or two.", "", ["pack", "small, for one"], ["solo", "for one with packs"], ["tandem", "for two"]],
	["partner", "The other's weight and height", "60 kg, 165 cm", "Only for two: who paddles in the bow.", "132 lb, 5 ft 5 in"],
	["child", "A child along: weight and height", "", "Rides and does not paddle; left empty, there is none. Children move: the boat is sized for that.", ""],
	["dog", "A dog along: its weight", "", "Left empty, there is none. A dog stands up when it likes.", ""],
	["gear", "Gear", "10 kg", "All that is carried besides people.", "22 lb"],
	["waters", "Water", "sheltered", "Sheltered: ponds, calm lakes near the shore, slow streams. Open: wide lakes and coasts, where waves want more side. Moving: rivers with a current, where turning wants more rocker.", "", ["sheltered", "sheltered"], ["open", "open"], ["moving", "moving"]],
	["skill", "You build", "average", "It decides the hours, here and in the build book, and how many spare ribs you saw.", "", ["beginner", "for the first time"], ["average", "now and then"], ["experienced", "often"]],
];

// How a field that is empty is filled in.
const forms = { span: "170 cm or 67 in", child: "25 kg, 120 cm or 55 lb, 4 ft", dog: "20 kg or 45 lb" };

// What is typed and not yet sized stays on the device.
const typed = () => { try { return JSON.parse(recall("ribwright-form") || "null"); } catch { return null; } };
let filled = "";

// fillForm builds the form when the units or the people of the state are others.
function fillForm() {
	const now = JSON.stringify([state.units, state.people]);
	if (filled !== now) buildForm();
	filled = now;
}

function buildForm() {
	const form = byId("people"), before = typed() ?? state.people;
	form.replaceChildren();
	for (const [name, asks, usual, why, pounds, ...choices] of questions) {
		const label = document.createElement("label"), span = document.createElement("span"), p = document.createElement("p");
		const field = document.createElement(choices.length ? "select" : "input");
		span.textContent = asks; p.textContent = why; field.name = name; field.id = "p-" + name;
		for (const [value, words] of choices) field.add(new Option(words, value));
		field.value = before?.[name] ?? (inch() && pounds ? pounds : usual);
		label.append(span, field, p);
		form.append(label);
	}
	const go = document.createElement("button");
	go.type = "submit"; go.textContent = "Size a boat for me";
	form.append(go);
	const two = () => { byId("p-partner").closest("label").hidden = byId("p-use").value !== "tandem"; };
	byId("p-use").onchange = two; two();
	const read = () => Object.fromEntries(new FormData(form));
	form.oninput = () => remember("ribwright-form", JSON.stringify(read()));
	form.onsubmit = async (e) => {
		e.preventDefault();
		const people = read();
		if (!withUnits(people)) return;
		if (!await baseOf({ base: "people", people })) return; // it has been said why
		remember("ribwright-form", null);
		change({ base: "people", people, set: {}, text: "", skill: "" }); // the design keeps it
		notice = "This boat is sized to your measure. Look at how it stands, change it if you like, then print it under Paper.";
		goTo("title");
	};
}

// needed may not be left empty.
const needed = ["weight", "height", "partner"];

// withUnits goes to a field that is empty and may not be, or whose figure has no unit, which
// the engine would not take.
function withUnits(people) {
	for (const [name, asks, usual, , pounds] of questions) {
		const field = byId("p-" + name), seen = field.checkVisibility(), words = people[name].trim();
		const empty = seen && !words && needed.includes(name), bare = seen && /^[\d.]+$/.test(words);
		field.toggleAttribute("aria-invalid", empty || bare);
		if (!empty && !bare) continue;
		const hint = empty && name === "height" && people.span.trim() ? " Most people are about as tall as their arms span." : "";
		say(`${asks}: ${empty ? "this is empty" : words + " has no unit"}. Write it as in ${forms[name] ?? `${usual} or ${pounds}`}.${hint}`, true);
		field.focus();
		return false;
	}
	return true;
}

// refuse says what is wrong with what was typed, and goes to the field.
function refuse(fault) {
	say(fault.says, true);
	const [field] = (fault.fields ?? []).map((f) => byId("p-" + ({ paddler: "weight", passenger: "child" }[f] ?? f)));
	field?.focus();
}

// sizing is the question for a boat to the measure of people.
function sizing(p) {
	const who = [p.weight, p.height, p.span ? "span " + p.span : "", p.posture].filter(Boolean).join(", ");
	const fields = [["paddler", who], ["use", p.use], ["gear", p.gear?.trim() || "0 kg"], ["waters", p.waters]];
	if (p.use === "tandem") fields.splice(1, 0, ["paddler", p.partner]);
	if (p.child) fields.push(["passenger", p.child]);
	if (p.skill) fields.push(["skill", p.skill]);
	if (p.dog) fields.push(["dog", p.dog]);
	return { verb: "size", fields, make: true, only: [".toml"] };
}
