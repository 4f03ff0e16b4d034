/** A promise that is settled from outside (`Promise.withResolvers` is newer than the browsers that the app runs in). */
export interface Settable<Value> {
	readonly promise: Promise<Value>;
	readonly resolve: (value: Value) => void;
	readonly reject: (error: Error) => void;
}

export function settable<Value = void>(): Settable<Value> {
	let resolve: (value: Value) => void = () => {};
	let reject: (error: Error) => void = () => {};
	const promise = new Promise<Value>((done, fail) => {
		resolve = done;
		reject = fail;
	});
	return { promise, resolve, reject };
}
