/** What the store refused, so that nothing was saved. */
export const words = {
	duplicate: {
		event: (id: string) => `The event ${id} is here already with other contents, so nothing was saved.`,
		calibration: (id: string) => `The calibration ${id} is here already with other contents, so nothing was saved.`,
	},
	again: (said: string) =>
		`${said} An earlier try that seemed to fail may have gone through: look at the log, and correct it there.`,
	tooMany: {
		events: (count: number, most: number) => `The two logs together would have ${count} events, and may have ${most}.`,
		calibrations: (count: number, most: number) =>
			`The two logs together would have ${count} calibrations, and may have ${most}.`,
	},
};

export type Words = typeof words;
