/** Open or closed loop, as loggers write what SAE J1979 PID 03 answers. */

/** 1: closed loop, trims at work; 0: open loop; NaN: it says neither. Codes: 1, 4 and 8 are open, 2 and 16 closed. */
export function readFuelSystem(text: string): number {
	const plain = text.trim().toLowerCase();
	if (/^(ol\b|open)/.test(plain)) return 0;
	if (/^(cl\b|closed)/.test(plain)) return 1;
	const code = /^\d+(\.0+)?$/.test(plain) ? Number(plain) : Number.NaN;
	return code === 2 || code === 16 ? 1 : code === 1 || code === 4 || code === 8 ? 0 : Number.NaN;
}
