import { render } from "preact";
import { followLaunches } from "../pwa/launch";
import { watchForUpdates } from "../pwa/update";

const root = document.getElementById("app");
if (root) {
	render(
		<main>
			<h1>Heeltap</h1>
		</main>,
		root,
	);
}
followLaunches(window);
watchForUpdates({ onReady: () => {}, onWaiting: () => {} });
