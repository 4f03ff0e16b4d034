import { strong } from "../../emphasis";

/** Figures as an instrument shows them, and where a sample was taken: for measurements and for their corrections. */
export const words = {
	placeMissing: "Name the place where it was taken.",
	takenWhere: "Where was it taken?",
	whichFuel: "Which fuel is it?",

	percent: "Percent",
	byte: "Raw byte",
	byteMore: "hexadecimal or decimal",
	rawByte: "raw byte",
	understood: (how: string, value: string) => `Understood: ${how}, which is ${strong(value)}.`,
	isHexadecimal: (value: string) => `It is hexadecimal: ${value}`,
	ofResponse: (hex: string, byte: number) => `the byte ${hex} of this response, ${byte} of 255`,
	hexadecimal: (hex: string, byte: number) => `hexadecimal ${hex}, ${byte} of 255`,
	decimal: (byte: number) => `decimal ${byte} of 255`,
	uneven: (spread: string) =>
		`The banks differ by ${spread}: fuel is the same for both, so this points to a leak or a sensor (common practice). Find that first.`,

	percentEmpty: (example: string) => `Type what the tool shows, such as ${example}.`,
	notAPercentage: (example: string) =>
		`A percentage has digits and at most one comma or point, such as ${example}. A raw byte? Then choose “Raw byte” above.`,
	outside: (least: string, most: string) =>
		`It must lie between ${least} and ${most}: check the number, or choose “Raw byte” above if it is one.`,
	byteEmpty: (example: string) => `Type the byte that the tool shows, such as ${example}.`,
	notAByte: (example: string) =>
		`A byte has digits and the letters A to F, such as ${example}. A percentage? Then choose “Percent” above.`,
	byteTooLarge: (example: string) =>
		`A byte goes from 0 to 255, or from 00 to FF: check the digits, such as ${example}.`,
	otherPid: (pids: readonly string[]) =>
		`This response is not one of PID ${pids.join(" or ")}: it would hold 41 ${pids[0]} and then the byte.`,
};

export type Words = typeof words;
