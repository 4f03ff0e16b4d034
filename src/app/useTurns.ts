import { useEffect, useState } from "preact/hooks";

/** Counts from 1 up, one a picture: a long page that is built piece by piece leaves the phone free to answer in between. */
export function useTurns(most: number): number {
	const [turn, setTurn] = useState(1);
	useEffect(() => {
		// Effects run after the picture, in a task of their own: building the next piece and placing it stay apart.
		if (turn < most) setTurn(turn + 1);
	}, [turn, most]);
	return turn;
}
