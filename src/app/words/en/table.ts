/** Long tables of numbers. */
export const words = {
	more: (count: number) => `Show ${count} more rows`,
};

export type Words = typeof words;
