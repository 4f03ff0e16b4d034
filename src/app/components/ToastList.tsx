import { useEffect, useState } from "preact/hooks";
import type { Toasts } from "../toasts";
import { shellWords } from "../words/shell";

export function ToastList({ toasts }: { readonly toasts: Toasts }) {
	const [list, setList] = useState(toasts.list());
	useEffect(() => toasts.subscribe(() => setList(toasts.list())), [toasts]);
	return (
		<div class="toasts" role="status" aria-live="polite">
			{list.map(({ id, text, action }) => (
				<div class="toast" key={id} onFocusIn={() => toasts.keep(id)}>
					<span>{text}</span>
					<span class="row">
						{action && (
							<button
								type="button"
								class="button"
								onClick={() => {
									toasts.dismiss(id);
									action.run();
								}}
							>
								{action.label}
							</button>
						)}
						<button
							type="button"
							class="button"
							aria-label={shellWords().dismiss(text)}
							onClick={() => toasts.dismiss(id)}
						>
							✕
						</button>
					</span>
				</div>
			))}
		</div>
	);
}
