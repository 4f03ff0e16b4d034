/** Names in the log of the invented car. */
export const words = {
	car: "Invented hatchback",
	gasoline: "Pump gasoline",
	blend: "Blend 30",
	places: { mill: "Mill Road", harbour: "Harbour", ring: "Ring road north" },
};

export type Words = typeof words;
