/** What is wrong among the last entries: asked only where one of them is odd. */
import { useAppState } from "./app";
import { useAnswer } from "./useAnswer";

/** `undefined`: not known yet, or of another log; null: nothing. */
export function useContradiction() {
	const { model, state } = useAppState();
	const { car, account, now } = state;
	const key = car && account && now?.odd ? JSON.stringify([car, account.count]) : null;
	const { answer, failed } = useAnswer(key, async () => ({ key, found: await model.contradiction(car?.id ?? "") }));
	const found = answer && answer.key === key ? answer.found : undefined;
	return { contradiction: account && key === null ? null : found, failed: failed && key !== null };
}
