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
	change({ set: { ...state.set, [fieldOf[m.measure]]: m.to_mm } });
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
	const easy = n.wood.filter((f) => ["holds", "bends dry", "dry, eases", "noted"].includes(f.verdict)), hard = n.wood.filter((f) => !easy.includes(f));
	const rest = document.createElement("li"), more = document.createElement("details"), head = document.createElement("summary"), inner = document.createElement("ul");
	head.textContent = `${easy.length} parts bend dry and hold with room to spare`;
	inner.className = "found"; inner.append(...easy.map((f) => item(f, false)));
	more.open = byId("wood").querySelector("details")?.open ?? false;
	more.append(head, inner); rest.append(more);
	list("wood", hard);
	byId("wood").append(rest);
	if (n.water.length) list("water", n.water);
}
