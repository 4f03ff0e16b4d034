import type { Words } from "../en/table";

export const words: Words = {
	more: (count) => `${count} Zeilen mehr zeigen`,
};
