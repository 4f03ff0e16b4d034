import { useState } from "preact/hooks";
import { useAppState } from "../app";
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
	return (
		<section class="card">
			<h2>Warnings</h2>
			<Check
				label="Notify me"
				more="Of a new warning, when the log changes while you look elsewhere."
				checked={state.settings.notify && permission === "granted"}
				disabled={permission === null || permission === "denied"}
				onChange={choose}
			/>
			{permission === null && (
				<p>This browser has no notifications. The warnings stand on the Tank screen all the same.</p>
			)}
			{permission === "denied" && (
				<p>
					The browser refuses notifications from this app. Allow them in the browser’s settings for this site, then come
					back. The warnings stand on the Tank screen all the same.
				</p>
			)}
		</section>
	);
}

/** Null: the browser has no notifications. */
function permissionNow(): NotificationPermission | null {
	return typeof Notification === "undefined" ? null : Notification.permission;
}
