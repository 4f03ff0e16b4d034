/** Around all screens. */
export const words = {
	screenMissing: "This screen could not be loaded. Reload the app once there is a network.",
	onThisPhone: "Heeltap is on this phone now and works without a network.",
	newVersion: "A new version is ready.",
	restart: "Restart",
	invented: "invented",
	opening: "Opening the log…",
	screens: "Screens",
	tabs: { tank: "Tank", fill: "Fill", log: "Log", car: "Car" },
	dismiss: (text: string) => `Dismiss: ${text}`,
	undo: "Undo",
};

export type Words = typeof words;
