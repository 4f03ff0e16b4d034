/** Why a typed number is none. */
export const words = {
	empty: (example: string) => `Type a number here, such as ${example}.`,
	notANumber: (example: string) => `Use digits and at most one comma or point, such as ${example}.`,
	outside: (limits: string) => `It must lie between ${limits}: check the number.`,
	outsideInUnit: (limits: string) => `It must lie between ${limits}: check the number and the unit.`,
	/** Limits as they stand after "between". */
	limits: (least: string, most: string) => `${least} and ${most}`,
	percentLimits: (least: string, most: string) => `${least} and ${most} %`,
	pointLimits: (least: string, most: string) => `${least} and ${most} points`,
	/** Of two limits that are the wrong way round. */
	swapped: (low: string) => `It must not be less than the lower limit, ${low}: swap them.`,
};

export type Words = typeof words;
