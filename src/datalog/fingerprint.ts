/** Tells logs apart by what they hold: a file that was renamed or copied is the same log. */

export interface Fingerprint {
	/** Takes the next piece of the text; how it is cut does not matter. */
	add(text: string): void;
	/** 16 hexadecimal digits. */
	digits(): string;
}

/** Two hashes of 32 bits in the manner of FNV-1a (Fowler, Noll, Vo): against chance, not against malice. */
export function fingerprint(): Fingerprint {
	let [first, second] = [0x811c9dc5, 0x9e3779b9];
	return {
		add(text) {
			let [a, b] = [first, second];
			for (let i = 0; i < text.length; i++) {
				const unit = text.charCodeAt(i);
				a = Math.imul(a ^ unit, 0x01000193);
				b = Math.imul(b ^ unit, 0x9e3779b1);
			}
			[first, second] = [a, b];
		},
		digits: () => hex(first) + hex(second),
	};
}

function hex(bits: number): string {
	return (bits >>> 0).toString(16).padStart(8, "0");
}
