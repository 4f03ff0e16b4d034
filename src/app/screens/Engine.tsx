import { useRef } from "preact/hooks";
import { useAppState } from "../app";
import { flashedNow } from "../calibrations";
import { engineWords } from "../words/engine";
import { Blend } from "./engine/Blend";
import { FuelSystemPart } from "./engine/FuelSystemPart";

/** What the blend does to the engine, and how much ethanol the fuel system is good for. */
export function EngineScreen() {
	const { car, now, events } = useAppState().state;
	const fuelSystem = useRef<HTMLDivElement>(null);
	if (!car || !(now || events)) return <p class="soft late">{engineWords().reading}</p>;
	const calibration = now?.calibration ?? flashedNow(car, events ?? []);
	const tank = now?.estimate ?? null;
	return (
		<>
			<Blend
				key={calibration?.id}
				car={car}
				tank={tank}
				calibration={calibration}
				onFuelSystem={() => fuelSystem.current?.scrollIntoView()}
			/>
			<div class="blend" ref={fuelSystem}>
				<FuelSystemPart car={car} tank={tank} calibration={calibration} />
			</div>
		</>
	);
}
