import { useEffect, useState } from "preact/hooks";
import { codesWords } from "../words/codes";
import { Check } from "./Check";
import { QrCode } from "./QrCode";

interface CodeSequenceProps {
	readonly links: readonly string[];
	/** What is in them. */
	readonly label: string;
}

/** Long enough for a phone to find and read one. */
const turnMs = 1_500;

/** As many codes as it takes, one after the other. */
export function CodeSequence({ links, label }: CodeSequenceProps) {
	const words = codesWords();
	const [place, setPlace] = useState(0);
	const [turning, setTurning] = useState(false);
	const count = links.length;
	useEffect(() => setPlace(0), [links]);
	useEffect(() => {
		if (!turning) return;
		const timer = setInterval(() => setPlace((place) => (place + 1) % count), turnMs);
		return () => clearInterval(timer);
	}, [turning, count]);
	const link = links[place] ?? links[0];
	if (count === 1) return <QrCode text={link} label={label} stands="low" />;
	const told = words.codeOf(place + 1, count);
	return (
		<>
			<p class="number" aria-live={turning ? "off" : "polite"}>
				<strong>{told}</strong>
			</p>
			<QrCode text={link} label={`${label}, ${told}`} stands="low" />
			<button type="button" class="button wide" onClick={() => setPlace((place + 1) % count)}>
				{words.next}
			</button>
			<button type="button" class="button wide" onClick={() => setPlace((place + count - 1) % count)}>
				{words.previous}
			</button>
			<Check label={words.turning} more={words.turningMore} checked={turning} onChange={setTurning} />
		</>
	);
}
