import type { Finding } from "../../../domain/datalog/finding";
import { Facts } from "../../components/Facts";
import { agreementWords, durationWords } from "../../dataLogWords";
import { exactPercent } from "../../format";
import { signedPercent } from "../../shownByte";

const ratio = new Intl.NumberFormat(undefined, { minimumFractionDigits: 2, maximumFractionDigits: 2 });

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
	return (
		<section class="card" aria-label="Lambda under load">
			<h2>Lambda under load</h2>
			{found ? (
				<>
					<p class="lead">
						<strong class="nowrap">{signedPercent(found.value)}</strong> against what is commanded, give or take{" "}
						<span class="nowrap">{exactPercent(found.sd)}</span>
					</p>
					{found.value > lean && (
						<p class="fault">Leaner than commanded under load: stay out of boost until your tuner has seen this log.</p>
					)}
					<Facts
						facts={[
							{ term: "Pulls", is: `${found.pulls}, ${durationWords(found.seconds)} in all` },
							{ term: "Commanded", is: `lambda ${ratio.format(found.commanded)}` },
							...(trim === null ? [] : [{ term: "Steady trim", is: signedPercent(trim) }]),
							...(found.longTrim === null
								? []
								: [{ term: "Long-term trim shown meanwhile", is: signedPercent(found.longTrim) }]),
						]}
					/>
					<p>{agreementWords[agreement]}</p>
				</>
			) : corrected > 0 ? (
				<p>
					Under load the short-term trims were at work all the time: what they correct cannot be seen in lambda, and the
					trims themselves are the reading.
				</p>
			) : (
				<p>
					Nothing here to read: it takes some seconds at high load, warm, with a commanded mixture that is clearly rich.
					Only where it is safe and lawful, and your tuner agrees.
				</p>
			)}
			{found !== null && corrected > 0 && (
				<p class="small soft">
					{corrected} more {corrected === 1 ? "pull was" : "pulls were"} left out: the short-term trims were at work
					there.
				</p>
			)}
		</section>
	);
}
