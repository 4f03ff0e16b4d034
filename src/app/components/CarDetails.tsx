import { useState } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import { useAppState } from "../app";
import { unitOf } from "../model";
import { readTank, tankFormOf } from "../tankForm";
import { useUnsaved } from "../unsaved";
import { carWords } from "../words/car";
import { CurrencyField, currencyFault } from "./CurrencyField";
import { Form } from "./Form";
import { TankFields } from "./TankFields";
import { TextField } from "./TextField";

/** Name, capacity, unit and currency, saved on a button. */
export function CarDetails({ car }: { readonly car: Car }) {
	const { model, state, toasts } = useAppState();
	const stored = { name: car.name, currency: car.currency ?? "", ...tankFormOf(car.tank, unitOf(state)) };
	const [form, setForm] = useState(stored);
	useUnsaved(JSON.stringify(form) !== JSON.stringify(stored));
	const [refused, setRefused] = useState(false);
	const tank = readTank(form, car.tank);
	const words = carWords();
	const name = form.name.trim();
	const nameFault = name === "" ? words.noName : null;
	const moneyFault = currencyFault(form.currency);
	function save(): Promise<boolean> | null {
		const wrong = nameFault !== null || moneyFault !== null || !tank.ok;
		setRefused(wrong);
		return wrong ? null : saved();
	}
	async function saved(): Promise<boolean> {
		if (!tank.ok) return false;
		const { currency: _, ...rest } = car;
		const currency = form.currency === "" ? {} : { currency: form.currency };
		const done = await model.saveCar({ ...rest, ...currency, name, tank: tank.value }, form.unit);
		if (done) toasts.show(words.saved);
		return done === true;
	}
	return (
		<Form label={words.thisCar} onSave={save}>
			<section class="card">
				<h2>{words.thisCar}</h2>
				<TextField
					label={words.name}
					value={form.name}
					fault={refused ? nameFault : null}
					onInput={(name) => setForm({ ...form, name })}
				/>
				<TankFields
					form={form}
					stored={car.tank}
					fault={refused && !tank.ok ? tank.error : undefined}
					onChange={setForm}
				/>
				<CurrencyField
					value={form.currency}
					fault={refused ? moneyFault : null}
					onChange={(currency) => setForm({ ...form, currency })}
				/>
				<p class="small soft">{words.capacityCounts}</p>
				<button type="submit" class="button wide">
					{words.save}
				</button>
			</section>
		</Form>
	);
}
