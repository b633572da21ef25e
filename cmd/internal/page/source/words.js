// What the engine says, as text and never as anything else.
function item(words, about, grave) {
	const li = document.createElement("li"), b = document.createElement("b");
	b.textContent = about[0].toUpperCase() + about.slice(1) + ". ";
	li.append(b, words[0].toUpperCase() + words.slice(1) + (/[.!?]$/.test(words) ? "" : "."));
	li.classList.toggle("grave", grave);
	return li;
}

function tell(n) {
	byId("title").textContent = n.design.title;
	document.title = n.design.title + " - Ribwright";
	byId("for").textContent = n.for;
	byId("told").replaceChildren(...n.told.map((t) => { const p = document.createElement("p"); p.textContent = t.says; return p; }));
	const list = (id, all) => byId(id).replaceChildren(...all.map((f) => item(f.says, f.about, f.danger || !f.passes)));
	// What bends dry and holds is said in one line; what asks for care stands out.
	const easy = n.wood.filter((f) => ["holds", "bends dry", "dry, eases", "noted"].includes(f.verdict)), hard = n.wood.filter((f) => !easy.includes(f));
	const rest = document.createElement("li"), more = document.createElement("details"), head = document.createElement("summary"), inner = document.createElement("ul");
	head.textContent = `${easy.length} parts bend dry and hold with room to spare`;
	inner.className = "found"; inner.append(...easy.map((f) => item(f.says, f.about, false)));
	more.open = byId("wood").querySelector("details")?.open ?? false;
	more.append(head, inner); rest.append(more);
	list("wood", hard);
	byId("wood").append(rest);
	if (n.water.length) list("water", n.water);
}
