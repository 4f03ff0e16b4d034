/** What the keeper is asked once and again when the question changes; the last answer stays until the next is there. */
import { useEffect, useState } from "preact/hooks";

interface Answered<Answer> {
	/** Undefined until the first is there. */
	readonly answer: Answer | undefined;
	readonly failed: boolean;
}

/** `key`: everything the answer hangs on; null: not to be asked yet. */
export function useAnswer<Answer>(key: string | null, ask: () => Promise<Answer>): Answered<Answer> {
	const [answered, setAnswered] = useState<Answered<Answer>>({ answer: undefined, failed: false });
	useEffect(() => {
		if (key === null) return;
		let current = true;
		ask().then(
			(answer) => current && setAnswered({ answer, failed: false }),
			() => current && setAnswered({ answer: undefined, failed: true }),
		);
		return () => {
			current = false;
		};
	}, [key]);
	return answered;
}
