/** Taps and keys in the words of the WebDriver standard, which WebDriver BiDi shares. */

export function tapActions(x: number, y: number, pointerType: "touch" | "mouse") {
	const actions = [
		{ type: "pointerMove", x: Math.round(x), y: Math.round(y), duration: 0 },
		{ type: "pointerDown", button: 0 },
		{ type: "pointerUp", button: 0 },
	];
	return [{ type: "pointer", id: pointerType, parameters: { pointerType }, actions }];
}

export function keyActions(text: string) {
	const actions = [...text].flatMap((value) => [
		{ type: "keyDown", value },
		{ type: "keyUp", value },
	]);
	return [{ type: "key", id: "keys", actions }];
}
