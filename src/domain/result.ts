/** An outcome that may be a reason why there is none. */
export type Result<Value, Reason> =
	| { readonly ok: true; readonly value: Value }
	| { readonly ok: false; readonly error: Reason };

export function ok<Value>(value: Value): { readonly ok: true; readonly value: Value } {
	return { ok: true, value };
}

export function err<Reason>(error: Reason): { readonly ok: false; readonly error: Reason } {
	return { ok: false, error };
}
