// Blocks of a report, set as they come from the engine; every word is text.
function made(kind, words, name) {
	const e = document.createElement(kind);
	if (words) e.textContent = words;
	if (name) e.className = name;
	return e;
}

const setters = {
	heading: (b) => made("h" + Math.min(6, b.level + 1), b.says),
	paragraph: (b) => made("p", b.says),
	caution: (b) => made("p", b.says, "caution"),
	list: (b) => {
		const list = made(b.numbered ? "ol" : "ul");
		list.append(...b.items.map((t) => made("li", t)));
		return list;
	},
	figure: (b) => {
		const figure = made("figure"), img = made("img", "", "drawn");
		img.src = "data:image/svg+xml," + encodeURIComponent(b.svg); img.alt = b.about;
		figure.append(img, made("figcaption", b.says));
		return figure;
	},
	table: (b) => {
		const box = made("div", "", "scroll"), t = made("table");
		if (b.title) t.append(made("caption", b.title));
		if (b.heads && b.heads.some((h) => h)) {
			const row = t.createTHead().insertRow();
			for (const [i, h] of b.heads.entries()) { const th = made("th", h, b.right[i] ? "number" : ""); th.scope = "col"; row.append(h ? th : made("td")); }
		}
		const body = t.createTBody();
		for (const cells of b.rows ?? []) {
			const row = body.insertRow();
			for (const [i, c] of cells.entries()) row.append(made("td", c, b.right[i] ? "number" : ""));
		}
		box.tabIndex = 0; box.role = "group"; box.ariaLabel = b.title || "Table";
		box.append(t);
		if (!b.note) return box;
		const both = made("div");
		both.append(box, made("p", b.note, "note"));
		return both;
	},
};

const setBlocks = (blocks) => blocks.map((b) => setters[b.kind](b));

// fold sets what comes first in full, and each section behind a line that opens; those that
// stood open stay so, and the first of a new report is open where that is wished.
function fold(box, blocks, first) {
	const fresh = box.childElementCount === 0, open = [...box.querySelectorAll("details[open]")].map((d) => d.dataset.name), out = [];
	for (const b of blocks) {
		if (b.kind === "heading") {
			const d = made("details");
			d.dataset.name = b.says; d.open = open.includes(b.says) || Boolean(first && fresh && out.at(-1)?.localName !== "details");
			d.append(made("summary", b.says));
			out.push(d);
		} else if (out.at(-1)?.localName === "details") out.at(-1).append(setters[b.kind](b)); else out.push(setters[b.kind](b));
	}
	box.replaceChildren(...out);
}
