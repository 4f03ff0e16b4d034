import { useState } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import type { AccountView } from "../../keeper/view";
import { useAppState } from "../app";
import { unitOf } from "../model";
import { useBackup } from "../useBackup";
import { carWords } from "../words/car";
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
	const words = carWords();
	async function remove(): Promise<void> {
		setAsking(false);
		if (await model.removeCar(car.id)) location.hash = "#/tank";
	}
	return (
		<section class="card">
			<h2>{words.remove}</h2>
			<button type="button" class="button wide" onClick={() => setAsking(true)}>
				{words.removeThis(car.name)}
			</button>
			{asking && (
				<Dialog title={words.removeQuestion(car.name)} onClose={() => setAsking(false)}>
					<p>{words.removing(account.count, car.calibrations.length)}</p>
					<button type="button" class="button wide" onClick={() => saveBackup(false)}>
						{words.backupFirst}
					</button>
					<button type="button" class="button wide strong" onClick={remove}>
						{words.removeForGood}
					</button>
					<button type="button" class="button wide" onClick={() => setAsking(false)}>
						{words.keep}
					</button>
				</Dialog>
			)}
		</section>
	);
}

/** The invented one goes with a tap, and comes back with another. */
export function RemoveInvented({ car, account }: RemoveCarProps) {
	const { model, state, toasts } = useAppState();
	const words = carWords();
	async function remove(): Promise<void> {
		const unit = unitOf(state);
		if (!(await model.removeCar(car.id))) return;
		location.hash = "#/tank";
		const bringBack = async () => {
			if (await model.addCar(car, unit, account.events)) location.hash = "#/car";
		};
		toasts.show(words.inventedGone, { label: words.undo, run: bringBack });
	}
	return (
		<section class="card">
			<h2>{words.isInvented}</h2>
			<p>{words.isInventedMore}</p>
			<a class="button wide" href="#/setup">
				{words.setUpOwn}
			</a>
			<button type="button" class="button wide" onClick={remove}>
				{words.removeInvented}
			</button>
		</section>
	);
}
