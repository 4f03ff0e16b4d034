/** The areas of the core, and the tests that are to catch a change to them: quick files first, since the first catch ends it. */
export interface Area {
	/** Folder. */
	readonly source: string;
	/** Files, or patterns. Left out is what takes minutes: what only it would catch counts as not caught. */
	readonly tests: readonly string[];
}

const inFolder = (folder: string, names: string) => names.split(" ").map((name) => `${folder}/${name}.test.ts`);

export const areas: Readonly<Record<string, Area>> = {
	core: {
		source: "src/domain",
		tests: [
			...inFolder("tests/domain", "quantity units voidedBy catalogue fuel warnings cost random event running"),
			...inFolder("tests/domain", "pumpView elementary *"),
		],
	},
	engine: { source: "src/domain/engine", tests: ["tests/domain/engine/*.test.ts"] },
	readings: { source: "src/domain/readings", tests: ["tests/domain/readings/*.test.ts"] },
	datalog: { source: "src/domain/datalog", tests: ["tests/domain/datalog/*.test.ts"] },
	plan: {
		source: "src/domain/plan",
		tests: inFolder("tests/domain/plan", "instrument replanning mixTable planAhead planAccount planSearch measures *"),
	},
	estimator: {
		source: "src/domain/estimator",
		tests: [
			...inFolder("tests/domain/estimator", "belief resample pump draws quantile lawful stretch trim jcgm101 leg"),
			"tests/domain/pumpView.test.ts",
			...inFolder("tests/domain/estimator", "absorb"),
		],
	},
	why: { source: "src/domain/why", tests: ["tests/domain/why/*.test.ts"] },
	doubt: { source: "src/domain/doubt", tests: ["tests/doubt/suspects.test.ts"] },
};
