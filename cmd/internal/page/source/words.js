// What the engine says, as text and never as anything else.
const capital = (words) => words[0].toUpperCase() + words.slice(1);

// item is a finding in a sentence, with what mends it where one measure does.
function item(f, grave) {
	const li = document.createElement("li"), b = document.createElement("b");
	b.textContent = capital(f.about) + ". ";
	li.append(b, capital(f.says) + (/[.!?]$/.test(f.says) ? "" : "."));
	li.classList.toggle("grave", grave);
	if (f.mend) {
		const cure = document.createElement("button");
		cure.type = "button"; cure.className = "mend"; cure.textContent = capital(f.mend.says);
		cure.onclick = () => mend(f.mend);
		li.append(cure);
	}
	return li;
}

// mend gives the boat the measure that mends it, as a slider would.
function mend(m) {
	change({ set: { ...state.set, [fieldOf[m.measure]]: m.to } });
	notice = `Done: ${m.says}. Undo takes it back.`;
	say(notice);
	byId("undo").focus({ preventScroll: true });
}

function tell(n) {
	byId("title").textContent = n.design.title;
	document.title = n.design.title + " - Ribwright";
	byId("for").textContent = n.for;
	byId("told").replaceChildren(...n.told.map((t) => { const p = document.createElement("p"); p.textContent = t.says; return p; }));
	const list = (id, all) => byId(id).replaceChildren(...all.map((f) => item(f, f.danger || !f.passes)));
	list("stands", n.lines.slice(0, 1)); list("bends", n.lines.slice(1));
	// What bends dry and holds is said in one line; what asks for care stands out.
	folded("wood", n.wood, (f) => ["holds", "bends dry", "dry, eases", "noted"].includes(f.verdict) && !f.mend, (k) => `${k} parts bend dry and hold with room to spare`);
	if (n.water.length) folded("water", n.water, (f) => f.passes && !f.danger && !f.mend, (k) => `${k} more figures: capacity, effort, flotation, weights`);
}

// folded lists findings, those that are easy behind a line that opens.
function folded(id, all, easy, words) {
	const rest = all.filter(easy), li = document.createElement("li"), more = document.createElement("details"), inner = document.createElement("ul");
	inner.className = "found"; inner.append(...rest.map((f) => item(f, false)));
	more.open = byId(id).querySelector("details")?.open ?? false;
	more.append(made("summary", words(rest.length)), inner); li.append(more);
	byId(id).replaceChildren(...all.filter((f) => !easy(f)).map((f) => item(f, f.danger || !f.passes)), ...(rest.length ? [li] : []));
}
