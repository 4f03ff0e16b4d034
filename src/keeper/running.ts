/** How far the fuel goes: loaded when first asked for. */
import { type Running, runningOf } from "../domain/running";
import type { previewsOf } from "./previews";

/** What is believed at an instant of consumption and of the way until empty; null while no leg was measured. */
export async function runningAt(atPump: ReturnType<typeof previewsOf>["atPump"], at: string): Promise<Running | null> {
	return runningOf((await atPump([], at, [])).belief);
}
