import { useState } from "preact/hooks";
import { useAppState } from "../app";
import { deviceWords } from "../words/device";
import { Check } from "./Check";

/** Whether the system may speak up for a new warning. */
export function NotifyChoice() {
	const { model, state } = useAppState();
	const [permission, setPermission] = useState(permissionNow);
	async function choose(wanted: boolean): Promise<void> {
		if (wanted && permission === "default") {
			const answer = await Notification.requestPermission();
			setPermission(answer);
			if (answer !== "granted") return;
		}
		await model.saveSettings({ notify: wanted });
	}
	const words = deviceWords();
	return (
		<section class="card">
			<h2>{words.warnings}</h2>
			<Check
				label={words.notify}
				more={words.notifyMore}
				checked={state.settings.notify && permission === "granted"}
				disabled={permission === null || permission === "denied"}
				onChange={choose}
			/>
			{permission === null && <p>{words.noNotifications}</p>}
			{permission === "denied" && <p>{words.denied}</p>}
		</section>
	);
}

/** Null: the browser has no notifications. */
function permissionNow(): NotificationPermission | null {
	return typeof Notification === "undefined" ? null : Notification.permission;
}
