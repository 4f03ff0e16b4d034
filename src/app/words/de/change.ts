import type { Words } from "../en/change";

export const words: Words = {
	still: (figure) => `weiterhin ${figure}`,
	became: "wurde zu",
};
