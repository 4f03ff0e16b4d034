import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { wordsReady } from "./words/language";
import { shellWords } from "./words/shell";

/** A screen whose code and words load when it is first shown. What fails to load is tried again on the next showing. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
	let loaded: ComponentType<Props> | null = null;
	return function Later(props: Props) {
		const [Screen, setScreen] = useState<{ readonly component: ComponentType<Props> } | null>(
			loaded && { component: loaded },
		);
		const [failed, setFailed] = useState(false);
		useEffect(() => {
			if (loaded) return;
			load().then(
				async (component) => {
					await wordsReady();
					loaded = component;
					setScreen({ component });
				},
				() => setFailed(true),
			);
		}, []);
		if (Screen) return <Screen.component {...props} />;
		return failed ? <p class="fault">{shellWords().screenMissing}</p> : <p class="soft">…</p>;
	};
}
