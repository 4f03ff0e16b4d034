/** From one figure to another. */
export const words = {
	still: (figure: string) => `still ${figure}`,
	/** Between two figures, for whoever hears them. */
	became: "became",
};

export type Words = typeof words;
