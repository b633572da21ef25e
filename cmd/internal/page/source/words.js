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
	list("wood", n.wood);
	if (n.water.length) list("water", n.water);
}
