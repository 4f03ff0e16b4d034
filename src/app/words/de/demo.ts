import type { Words } from "../en/demo";

export const words: Words = {
	car: "Erfundener Kombi",
	gasoline: "Superbenzin",
	blend: "Gemisch 30",
	places: { mill: "Mühlenweg", harbour: "Hafen", ring: "Nordring" },
};
