import { strong } from "../../emphasis";

/** The water test. */
export const words = {
	title: "Water test",
	about:
		"Water draws the ethanol out of the fuel, and the lower layer grows. Both shrink as they mix; that is corrected for.",
	steps: [
		"Have a narrow graduated cylinder that closes, of glass or of plastic that fuel does not attack, and water.",
		"From a pump: let the hose’s old fuel run into the tank first, then take the sample in an approved can.",
		"Fill in fuel, 50\u00a0mL say, and read it at eye level, at the bottom of its curve.",
		"Add as much water again. With little water a strong fuel reads high.",
		"Close it, shake for 15\u00a0seconds, open it slowly to let the pressure out, and shake once more.",
		"Let it stand upright for five minutes, until the line between the layers is sharp.",
		"Read the lower layer: where the two liquids meet.",
	],
	cautions: [
		"Outdoors, nothing hot, burning or sparking near, no smoking: vapour lights far from the sample.",
		"Goggles, and gloves that fuel does not go through. Do not breathe the vapour; wash off what gets on the skin.",
		"A sample from the tank: fuel in the lines is under pressure. Leave that to a workshop, unless the car’s maker gives a procedure.",
		"The sample is hazardous waste, water and all: keep it in a closed, marked can and hand it in where waste fuel is taken. Never pour it back into the tank, down a drain or on the ground.",
	],
	source: "The sample is from",
	tank: "The tank",
	pump: "A pump",
	pumpMore: "a sample from its nozzle",
	fuel: "Fuel, mL",
	water: "Water, mL",
	layer: "Lower layer after settling, mL",
	layerHint: "All of it, the water included.",
	readTo: "Each is read to within, mL",
	readToHint: "Half the step between two marks.",
	own: "Give or take of the method, points",
	ownHint:
		"For ethanol left in the fuel and gasoline in the water. Empty: 2 up to 40 % ethanol, 4 above (common practice).",
	understood: (content: string, points: string, uncorrected: string) =>
		`${strong(content)} ethanol, give or take ${points}\u00a0points. Without the correction it would read ${uncorrected}.`,
	strongLayer: (strength: string) =>
		`The lower layer would be ${strength} ethanol: so strong a layer takes up gasoline and reads high. Repeat it with as much water as fuel.`,
	/** Behind "between". */
	limits: (least: string, most: string) => `${least} and ${most}\u00a0mL`,
	faults: {
		layerLost: "The lower layer is smaller than the water that went in: read it again, or check the water.",
		layerTooLarge: "So much ethanol was not in the fuel: check the three volumes, and that this is the lower layer.",
	},
};

export type Words = typeof words;
