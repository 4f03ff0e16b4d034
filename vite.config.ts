import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import { manifest, screenshots } from "./src/pwa/manifest.ts";
import { logSchemaFile } from "./src/tools/logSchema.ts";
import { headers, liveServers, policyTag } from "./src/tools/policy.ts";

const root = import.meta.dirname;
const inPublic = (file: string) => existsSync(join(root, "public", file));
// Tests of updates build the app twice; all else takes the version of package.json.
const version = process.env.HEELTAP_VERSION ?? JSON.parse(readFileSync(join(root, "package.json"), "utf8")).version;
const define = {
	__HEELTAP_VERSION__: JSON.stringify(version),
	__HEELTAP_LIVE__: JSON.stringify(liveServers()),
};

// One more than the two cores of CI: tests of screens wait for timers for a quarter of their time.
const maxWorkers = 3;

// Of the built app, those that no measured time hangs on: side by side, with the other engines.
const sideBySide = ["tests/e2e/{access,policy}.test.ts"];

// What would not end in CI's time.
const long = [
	"tests/e2e/{damage,german,keyboard,report,spoken,update}.test.ts",
	"tests/live/{twoBrowsers,long/*}.test.ts",
];

// Screens whose tests change the language or put something else in a module's place: each begins with modules of its own.
const apart = [
	"tests/app/*{g,G}erman.test.{ts,tsx}",
	"tests/app/{dataLog,dataLogSaved,liveServers,updates}.test.{ts,tsx}",
];

/** Tests in jsdom. */
function screens(name: string, which: { readonly include: string[]; readonly exclude?: string[]; isolate: boolean }) {
	return {
		root,
		// A copy: Vitest takes what it is given apart.
		define: { ...define },
		test: {
			name,
			...which,
			environment: "jsdom",
			setupFiles: ["tests/app/cleanup.ts", "tests/helpers/fewParticles.ts", "tests/helpers/drawn.ts"],
			// Beyond what Testing Library waits for one thing, on a machine that others use as well.
			testTimeout: 120_000,
			// Left to Node, Testing Library would load a second Preact.
			server: { deps: { inline: ["@testing-library/preact"] } },
			maxWorkers,
		},
	};
}

export default defineConfig({
	root: "src",
	publicDir: "../public",
	cacheDir: "../node_modules/.vite",
	base: "./",
	// One page all the same, but a missing file is a 404: never the page under another name.
	appType: "mpa",
	define,
	build: {
		outDir: "../dist",
		emptyOutDir: true,
		// Phones of 2022 on: iOS 16 gets 16.4 and later, Android a current Chrome or Firefox.
		target: ["safari16.4", "chrome109", "firefox115"],
		// Safari 16 only loses a head start without it.
		modulePreload: { polyfill: false },
		// Inlined as data: addresses, pictures would break the policy.
		assetsInlineLimit: 0,
		// What a first visit needs comes in a few files, with all that they import, and not in forty: each costs a round trip.
		rolldownOptions: {
			output: {
				codeSplitting: {
					groups: [
						{ name: "start", test: /src\/app\/main\.tsx$/, priority: 3 },
						{ name: "setup", test: /src\/app\/screens\/Setup\.tsx$/, priority: 2 },
						{
							name: "watch",
							test: /src\/app\/(followScreens|updates|damageWatch|backupWatch|fleetWatch)\.ts$/,
							priority: 1,
						},
					],
				},
			},
		},
	},
	worker: { format: "es" },
	// Another port would be another origin, with a log of its own.
	preview: { port: 4173, strictPort: true, headers },
	plugins: [
		policyTag(),
		logSchemaFile(),
		VitePWA({
			strategies: "injectManifest",
			srcDir: "sw",
			filename: "sw.ts",
			registerType: "prompt",
			injectRegister: false,
			manifest: { ...manifest, screenshots: screenshots.filter((shot) => inPublic(shot.src)) },
			includeManifestIcons: false,
			injectManifest: {
				rollupFormat: "iife",
				globPatterns: ["**/*.{js,css,html}", "icon.svg"],
				// Of no use without a network, nor where replication is off.
				globIgnores: ["**/natsWire-*.js"],
			},
		}),
	],
	test: {
		root,
		reporters: [
			"default",
			["json", { outputFile: process.env.HEELTAP_REPORT ?? join(root, "node_modules/.heeltap-tests.json") }],
		],
		projects: [
			{
				root,
				// A copy: Vitest takes what it is given apart.
				define: { ...define },
				test: {
					name: "unit",
					include: ["tests/**/*.test.ts"],
					exclude: [
						"tests/{app,pwa,keeper,e2e,engines,crash}/**",
						"tests/live/{*,long/*}.test.ts",
						"tests/size.test.ts",
					],
					setupFiles: "tests/helpers/drawn.ts",
					isolate: false,
					testTimeout: 60_000,
					maxWorkers,
				},
			},
			{
				root,
				// A copy: Vitest takes what it is given apart.
				define: { ...define },
				test: {
					name: "keeper",
					include: ["tests/keeper/**/*.test.ts"],
					setupFiles: ["tests/helpers/fewParticles.ts", "tests/helpers/drawn.ts"],
					isolate: false,
					testTimeout: 60_000,
					maxWorkers,
				},
			},
			// To load modules and jsdom once instead of for each file saves half of the time.
			screens("component", { include: ["tests/{app,pwa}/**/*.test.{ts,tsx}"], exclude: apart, isolate: false }),
			screens("apart", { include: apart, isolate: true }),
			{
				root,
				define: { ...define },
				test: {
					name: "e2e",
					include: ["tests/e2e/**/*.test.ts", "tests/live/*.test.ts", "tests/size.test.ts"],
					exclude: [...sideBySide, ...long],
					globalSetup: "tests/e2e/build.ts",
					fileParallelism: false,
					// After the others: times and time-outs are measured on a quiet machine.
					sequence: { groupOrder: 1 },
					testTimeout: 120_000,
					hookTimeout: 120_000,
				},
			},
			{
				root,
				define: { ...define },
				test: {
					name: "engines",
					include: ["tests/{engines,crash}/**/*.test.ts", ...sideBySide],
					globalSetup: "tests/e2e/build.ts",
					maxWorkers,
					sequence: { groupOrder: 2 },
					testTimeout: 300_000,
					hookTimeout: 300_000,
				},
			},
			{
				root,
				define: { ...define },
				test: {
					name: "allCases",
					include: ["tests/{doubt/doubt,accuracy/trims,domain/estimator/laws,keeper/hostileImport}.test.ts"],
					env: { HEELTAP_ALL_CASES: "1" },
					maxWorkers,
					sequence: { groupOrder: 3 },
					testTimeout: 600_000,
				},
			},
			{
				root,
				define: { ...define },
				test: {
					name: "long",
					include: long,
					globalSetup: "tests/e2e/build.ts",
					fileParallelism: false,
					sequence: { groupOrder: 4 },
					testTimeout: 600_000,
					hookTimeout: 300_000,
				},
			},
		],
	},
});
