import { emphasised } from "../emphasis";

/** A sentence in which what was marked is strong, and stays on one line. */
export function Emphasised({ text }: { readonly text: string }) {
	return (
		<>
			{emphasised(text).map((part, i) =>
				i % 2 === 1 ? (
					<strong class="nowrap" key={part}>
						{part}
					</strong>
				) : (
					part
				),
			)}
		</>
	);
}
