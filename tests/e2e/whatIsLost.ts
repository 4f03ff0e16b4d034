/** Run in the page: what of its text is cut off, out of reach or under other text. `width` is the phone's. */
export function whatIsLost(width: number): string[] {
	const told = (element: Element | null) =>
		`${element?.tagName.toLowerCase()}.${element?.getAttribute("class")} “${element?.textContent?.slice(0, 30)}”`;
	const under = (holds: (style: CSSStyleDeclaration) => boolean) => {
		const known = new Map<Element | null, boolean>([[null, false]]);
		return function isUnder(element: Element | null): boolean {
			const said =
				known.get(element) ?? (holds(getComputedStyle(element as Element)) || isUnder(element?.parentElement ?? null));
			known.set(element, said);
			return said;
		};
	};
	const scrolls = under(({ overflowX }) => /auto|scroll/.test(overflowX));
	const floats = under(({ position }) => /fixed|sticky/.test(position));
	const found: string[] = [];
	const texts: { element: Element; box: DOMRect }[] = [];
	const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let node = walker.nextNode(); node; node = walker.nextNode()) {
		const element = node.parentElement;
		if (
			!element ||
			!node.textContent?.trim() ||
			!element.checkVisibility({ visibilityProperty: true }) ||
			element.closest(".hidden, option")
		)
			continue;
		const range = document.createRange();
		range.selectNodeContents(node);
		const boxes = [...range.getClientRects()].filter((box) => box.width > 1);
		const inScroller = scrolls(element);
		const frame = element.closest("button, a, summary, .face, .toast, .card, td, th, .top")?.getBoundingClientRect();
		for (const box of boxes) {
			if (!inScroller && (box.left < -1 || box.right > width + 1)) found.push(`beyond the phone: ${told(element)}`);
			else if (frame && !inScroller && (box.left < frame.left - 1 || box.right > frame.right + 1))
				found.push(`beyond its frame: ${told(element)}`);
			if (!floats(element)) texts.push({ element, box });
		}
	}
	for (const element of document.querySelectorAll("body *:not(.hidden, input, textarea, svg *)")) {
		const { overflowX, overflowY } = getComputedStyle(element);
		const { scrollWidth, clientWidth, scrollHeight, clientHeight } = element;
		if (!element.textContent?.trim() || clientWidth === 0) continue;
		const cut = (overflow: string) => overflow === "hidden" || overflow === "clip";
		if ((cut(overflowX) && scrollWidth > clientWidth + 1) || (cut(overflowY) && scrollHeight > clientHeight + 1))
			found.push(`cut off: ${told(element)}`);
	}
	// Line boxes are taller than their letters.
	const top = ({ top, height }: DOMRect) => top + height * 0.3;
	const bottom = ({ bottom, height }: DOMRect) => bottom - height * 0.3;
	texts.sort((one, other) => top(one.box) - top(other.box));
	texts.forEach(({ element, box }, i) => {
		for (let j = i + 1; j < texts.length && top(texts[j].box) < bottom(box) - 1; j++) {
			const { element: other, box: to } = texts[j];
			const across = Math.min(box.right, to.right) - Math.max(box.left, to.left);
			const down = Math.min(bottom(box), bottom(to)) - top(to);
			if (across > 2 && down > 1) found.push(`${told(element)} lies on ${told(other)}`);
		}
	});
	if (document.documentElement.scrollWidth > width)
		found.push(`the page is ${document.documentElement.scrollWidth} px wide`);
	return [...new Set(found)];
}

/** Run in the page: words of another script, running from right to left, each half as long again. Numbers stay. */
export function turnWords(): void {
	document.documentElement.dir = "rtl";
	const letters = "אבגדהוזחטיכלמנסעפצקרשת";
	const turned = (word: string) =>
		Array.from(
			{ length: Math.ceil(word.length * 1.5) },
			(_, i) => letters[(word.charCodeAt(i % word.length) + i) % 22],
		).join("");
	const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let node = walker.nextNode(); node; node = walker.nextNode())
		node.textContent = node.textContent?.replace(/[A-Za-z’]+/g, turned) ?? "";
}
