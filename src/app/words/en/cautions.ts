/** The usual cautions of the trade. */
export const words = {
	title: "Cautions",
	usual: [
		"This is an estimate. It knows what you told it and what fuel labels allow, not what is in the tank.",
		"Your tuner’s limits come first, then the car maker’s. Nothing here replaces a measurement.",
		"The law on fuels and emissions applies. In the United States, blends above 15 % ethanol are lawful in flex-fuel vehicles only; other countries have their own rules.",
		"Many engines do not carry learned fuel trims into full load (13 of 25 cars screened in CRC E-87-1), so a lean blend is not corrected for when it matters most.",
		"At the pump: engine off, no smoking, no flames, do not go back into the car while it fills (static), do not top off after the click, and use the phone away from the nozzle.",
	],
};

export type Words = typeof words;
