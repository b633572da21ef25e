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
		box.tabIndex = 0; box.role = "region"; box.ariaLabel = b.title || "Table";
		box.append(t);
		if (!b.note) return box;
		const both = made("div");
		both.append(box, made("p", b.note, "note"));
		return both;
	},
};

const setBlocks = (blocks) => blocks.map((b) => setters[b.kind](b));
