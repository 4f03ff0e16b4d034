import type { Finding } from "../../../domain/datalog/finding";
import { Emphasised } from "../../components/Emphasised";
import { Facts } from "../../components/Facts";
import { durationWords } from "../../dataLogWords";
import { exactPercent } from "../../format";
import { numbers } from "../../formatters";
import { signedPercent } from "../../shownByte";
import { dataLogWords } from "../../words/dataLog";

const ratio = numbers({ minimumFractionDigits: 2, maximumFractionDigits: 2 });

/** Leaner than commanded by more than this under load is worth a word of its own (common practice). */
const lean = 0.03;

/** Lambda in open loop against the commanded one: another reading of the same thing, never mixed with the first. */
export function LoadCard({
	load,
	trim,
}: {
	readonly load: NonNullable<Finding["load"]>;
	readonly trim: number | null;
}) {
	const { found, corrected, agreement } = load;
	const words = dataLogWords();
	return (
		<section class="card" aria-label={words.load}>
			<h2>{words.load}</h2>
			{found ? (
				<>
					<p class="lead">
						<Emphasised text={words.loadLead(signedPercent(found.value), exactPercent(found.sd))} />
					</p>
					{found.value > lean && <p class="fault">{words.leanUnderLoad}</p>}
					<Facts
						facts={[
							{ term: words.pulls, is: words.pullsIn(found.pulls, durationWords(found.seconds)) },
							{ term: words.commanded, is: words.lambda(ratio.format(found.commanded)) },
							...(trim === null ? [] : [{ term: words.steadyTrim, is: signedPercent(trim) }]),
							...(found.longTrim === null ? [] : [{ term: words.longTrim, is: signedPercent(found.longTrim) }]),
						]}
					/>
					<p>{words.agreements[agreement]}</p>
				</>
			) : (
				<p>{corrected > 0 ? words.allCorrected : words.noLoad}</p>
			)}
			{found !== null && corrected > 0 && <p class="small soft">{words.corrected(corrected)}</p>}
		</section>
	);
}
