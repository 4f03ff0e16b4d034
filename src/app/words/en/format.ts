/** Around numbers and times, wherever they are said. */
export const words = {
	fromTo: (low: string, high: string) => `${low} to ${high}`,
	almostNone: "almost none",
	fewerThanOne: "fewer than 1 in 20",
	moreThanNineteen: "more than 19 in 20",
	inTwenty: (count: string) => `${count} in 20`,
	withinTheHour: "within the last hour",
	today: "today",
	aDayAgo: "a day ago",
	daysAgo: (days: number) => `${days} days ago`,
};

export type Words = typeof words;
