/** Runs what it is given one after the other, each once the one before is done, well or not. */
export type InTurn = <T>(work: () => Promise<T>) => Promise<T>;

export function inTurns(): InTurn {
	let queue: Promise<unknown> = Promise.resolve();
	return (work) => {
		const done = queue.then(work);
		queue = done.catch(() => {});
		return done;
	};
}
