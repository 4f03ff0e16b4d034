import { useState } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import type { AccountView } from "../../keeper/view";
import { useAppState } from "../app";
import { unitOf } from "../model";
import { useBackup } from "../useBackup";
import { Dialog } from "./Dialog";

interface RemoveCarProps {
	readonly car: Car;
	readonly account: AccountView;
}

/** A car of one's own goes after a question, with a backup on offer. */
export function RemoveCar({ car, account }: RemoveCarProps) {
	const { model } = useAppState();
	const saveBackup = useBackup(car);
	const [asking, setAsking] = useState(false);
	async function remove(): Promise<void> {
		setAsking(false);
		if (await model.removeCar(car.id)) location.hash = "#/tank";
	}
	return (
		<section class="card">
			<h2>Remove this car</h2>
			<button type="button" class="button wide" onClick={() => setAsking(true)}>
				Remove “{car.name}”…
			</button>
			{asking && (
				<Dialog title={`Remove “${car.name}”?`} onClose={() => setAsking(false)}>
					<p>
						Its {account.count === 1 ? "one entry" : `${account.count} entries`} and{" "}
						{car.calibrations.length === 1 ? "its calibration" : `${car.calibrations.length} calibrations`} go from this
						phone, and nothing brings them back but a backup.
					</p>
					<button type="button" class="button wide" onClick={() => saveBackup(false)}>
						Save a backup first
					</button>
					<button type="button" class="button wide strong" onClick={remove}>
						Remove it for good
					</button>
					<button type="button" class="button wide" onClick={() => setAsking(false)}>
						Keep the car
					</button>
				</Dialog>
			)}
		</section>
	);
}

/** The invented one goes with a tap, and comes back with another. */
export function RemoveInvented({ car, account }: RemoveCarProps) {
	const { model, state, toasts } = useAppState();
	async function remove(): Promise<void> {
		const unit = unitOf(state);
		if (!(await model.removeCar(car.id))) return;
		location.hash = "#/tank";
		const bringBack = async () => {
			if (await model.addCar(car, unit, account.events)) location.hash = "#/car";
		};
		toasts.show("The invented car is gone.", {
			label: "Undo",
			run: bringBack,
		});
	}
	return (
		<section class="card">
			<h2>This car is invented</h2>
			<p>It is here to look around with. Its stops, places and readings never were.</p>
			<a class="button wide" href="#/setup">
				Set up your own car
			</a>
			<button type="button" class="button wide" onClick={remove}>
				Remove the invented car
			</button>
		</section>
	);
}
