/** How something was measured. What the app itself notes in a log is English, whatever the driver reads. */
export const words = {
	/** A method as it stands in a log; what a driver has typed stays as it is. */
	told: (method: string) => method,
};

export type Words = typeof words;
