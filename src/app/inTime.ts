/** An answer, or null where it fails or takes longer than a driver should wait. */
export function inTime<Answer>(answer: Promise<Answer | null>, withinMs: number): Promise<Answer | null> {
	const late = new Promise<null>((done) => setTimeout(() => done(null), withinMs));
	return Promise.race([answer.catch(() => null), late]);
}
