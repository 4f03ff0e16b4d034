import { useState } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import { useAppState } from "../app";
import { unitOf } from "../model";
import { readTank, tankFormOf } from "../tankForm";
import { CurrencyField, currencyFault } from "./CurrencyField";
import { Form } from "./Form";
import { TankFields } from "./TankFields";
import { TextField } from "./TextField";

/** Name, capacity, unit and currency, saved on a button. */
export function CarDetails({ car }: { readonly car: Car }) {
	const { model, state, toasts } = useAppState();
	const [form, setForm] = useState(() => ({
		name: car.name,
		currency: car.currency ?? "",
		...tankFormOf(car.tank, unitOf(state)),
	}));
	const [refused, setRefused] = useState(false);
	const tank = readTank(form, car.tank);
	const name = form.name.trim();
	const nameFault = name === "" ? "Give the car a name, such as “The grey one”." : null;
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
		if (done) toasts.show("The car is saved.");
		return done === true;
	}
	return (
		<Form label="This car" onSave={save}>
			<section class="card">
				<h2>This car</h2>
				<TextField
					label="Name of the car"
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
				<p class="small soft">A new capacity counts for the whole log: the account is then reckoned anew.</p>
				<button type="submit" class="button wide">
					Save the car
				</button>
			</section>
		</Form>
	);
}
