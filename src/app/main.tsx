import { render } from "preact";
import { followLaunches } from "../pwa/launch";
import { Main } from "./App";
import { AppContext } from "./app";
import { keeperInWorker } from "./keeperPort";
import { seenOnThisDevice } from "./lastSeen";
import { createModel } from "./model";
import { addressOf } from "./scripts";
import { createToasts } from "./toasts";
import { language, wordsReady } from "./words/language";
import { storageWords } from "./words/storage";
import "./styles/base.css";
import "./styles/controls.css";
import "./styles/frame.css";

const toasts = createToasts();
const report = (error: unknown) => globalThis.reportError?.(error);
const keeper = keeperInWorker((trouble) => toasts.show(storageWords()[trouble], undefined, true));
const model = createModel(
	keeper,
	() => crypto.randomUUID(),
	report,
	seenOnThisDevice(() => localStorage),
);
const now = () => Date.now();

document.documentElement.lang = language;

// Not awaited at the top: words may come in a file that needs this one.
wordsReady().then(() => setTimeout(show));
// On a first visit it is asked for before the empty log has told that there is no car.
if (!model.state().car) import("./screens/Setup").catch(() => {});
followLaunches(window);
import("./updates").then(({ watchUpdates }) => watchUpdates(model, toasts, addressOf("serviceWorker"))).catch(report);

/** The first picture, in a task of its own. The tank as last seen is on the screen before the worker is even started. */
function show(): void {
	const root = document.getElementById("app");
	if (!root) return;
	render(
		<AppContext.Provider value={{ model, toasts, now }}>
			<Main />
		</AppContext.Provider>,
		root,
	);
	import("./followScreens").then(async ({ followScreens }) => {
		await wordsReady();
		followScreens();
	}, report);
	setTimeout(begin);
}

async function begin(): Promise<void> {
	await model.start();
	const { watchOver } = await import("./damageWatch");
	await watchOver(model, keeper, () => localStorage, report);
	const { watchBackups } = await import("./backupWatch");
	await watchBackups(model, keeper, now, report);
	const { watchFleet } = await import("./fleetWatch");
	await watchFleet(model, keeper, now, report);
	if (model.state().settings.live) (await import("./liveWatch")).watchLive(keeper, report);
}
