import { useState } from "preact/hooks";
import { modelVersion } from "../../domain/modelVersion";
import type { AccountView, TankNow } from "../../keeper/view";
import { version } from "../../pwa/version";
import type { ReportNote } from "../../store/report";
import { isoWithOffset, useApp, useAppState } from "../app";
import { backupName, canShareFiles, download, share } from "../backupFile";
import { DotPlot } from "../components/DotPlot";
import { ReportPage } from "../components/ReportPage";
import { unitOf } from "../model";
import { reportPicture } from "../reportPicture";
import { type Reported, type ReportTold, reportTold } from "../reportTold";
import { canShareImages, pngOf, shareImage } from "../shareImage";
import { useAnswer } from "../useAnswer";
import { useContradiction } from "../useContradiction";
import { usePrintedSheet } from "../usePrintedSheet";
import { reportWords } from "../words/report";

/** The tank as it stands, for owner and tuner: on the screen, on paper, as a picture, and as a file that opens in the app. */
export function ReportScreen() {
	const { account } = useAppState().state;
	const words = reportWords();
	if (!account)
		return (
			<p class="soft" role="status">
				{words.reading}
			</p>
		);
	if (!account.now)
		return (
			<div class="card">
				<p>{words.nothing}</p>
				<a class="button main" href="#/fill">
					{words.record}
				</a>
			</div>
		);
	// Another account is another report, made at another time.
	return <Made key={`${account.car.id} ${account.count}`} account={account} tank={account.now} />;
}

interface MadeProps {
	readonly account: AccountView;
	readonly tank: TankNow;
}

function Made({ account, tank }: MadeProps) {
	const { model, state, now } = useAppState();
	const [at] = useState(() => isoWithOffset(now()));
	const { contradiction, failed } = useContradiction();
	const { answer: why, failed: whyFailed } = useAnswer(account.car.id, () => model.why(account.car.id));
	usePrintedSheet("report");
	const words = reportWords();
	const reported: Reported = {
		account,
		tank,
		contradiction,
		unchecked: failed,
		why: why ?? null,
		unit: unitOf(state),
		at,
	};
	const told = reportTold(reported);
	const { estimate, calibration } = tank;
	return (
		<>
			<ReportPage told={told}>
				<DotPlot
					dots={estimate.dots}
					window={calibration?.window ?? null}
					calibratedFor={calibration?.calibratedFor ?? null}
				/>
			</ReportPage>
			{why === undefined && !whyFailed && (
				<p class="soft" role="status">
					{words.findingShares}
				</p>
			)}
			<WaysOut reported={reported} told={told} />
			<a class="button wide" href="#/tank">
				{words.back}
			</a>
		</>
	);
}

interface WaysOutProps {
	readonly reported: Reported;
	readonly told: ReportTold;
}

function WaysOut({ reported, told }: WaysOutProps) {
	const { model, toasts } = useApp();
	const words = reportWords();
	const { account, tank, contradiction, unchecked, at } = reported;
	const name = backupName(words.fileName(account.car.name), at.slice(0, 10));
	async function sendPicture(): Promise<void> {
		try {
			const drawn = { dots: tank.estimate.dots, window: tank.calibration?.window ?? null };
			const picture = reportPicture(told, drawn, { width: 640, text: 15 });
			const done = await shareImage(await pngOf(picture), name);
			if (done === "saved") toasts.show(words.savedAs(`${name}.png`));
		} catch {
			toasts.show(words.noPicture);
		}
	}
	async function sendFile(): Promise<void> {
		const text = await model.exportLog(account.car.id, noteOf(reported));
		if (text === null) return;
		const sharing = canShareFiles();
		const sent = sharing ? await share(text, name) : "refused";
		if (sent !== "refused") return;
		download(text, name);
		toasts.show((sharing ? words.notSent : words.savedAs)(`${name}.json`));
	}
	return (
		<section class="card">
			<button type="button" class="button main" onClick={() => window.print()}>
				{words.print}
			</button>
			<button type="button" class="button wide" onClick={sendPicture}>
				{canShareImages() ? words.sendPicture : words.savePicture}
			</button>
			{/* Without what is odd the file would say less than the page. */}
			<button type="button" class="button wide" disabled={contradiction === undefined} onClick={sendFile}>
				{canShareFiles() ? words.sendFile : words.saveFile}
			</button>
			{unchecked && <p class="fault">{words.noFile}</p>}
			<p class="small soft">{words.fileAbout}</p>
			{account.unreadable > 0 && <p class="fault">{words.unreadable(account.unreadable)}</p>}
		</section>
	);
}

/** What the file says beside the log. */
function noteOf({ tank: { estimate, calibration, surprise, last }, contradiction, at }: Reported): ReportNote {
	const { median, low, high, below, above } = estimate;
	return {
		made: at,
		app: version,
		model: modelVersion,
		says: {
			figures: { median, low, high, below, above },
			calibration: calibration?.id ?? null,
			surprise,
			grave: contradiction?.grave ?? false,
			last: last.at,
		},
	};
}
