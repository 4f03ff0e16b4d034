import { screen, waitFor } from "@testing-library/preact";
import { expect, test } from "vitest";
import { framed } from "../../src/share/frame";
import { holdingsOf, packedHoldings } from "../../src/share/holdings";
import { foundIn } from "../../src/share/link";
import { packedPart, partOf, readPart } from "../../src/share/part";
import { codeBytes, linksOf, wholeOf, withPiece } from "../../src/share/sequence";
import { formatLog } from "../../src/store/backup";
import { aCalibration, aCar, aFill, aFlash, aStart, aTankReading, aVoid } from "../helpers/logs";
import { measuredCar, reportText } from "../helpers/reports";
import { renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T12:00:00+02:00");
const app = "https://elsewhere.example/";
const start = aStart();
const early = aFill({ id: "f1", stop: "s1", at: "2026-06-03T12:00:00+02:00", after: "start" });
const late = aFill({ id: "f2", stop: "s2", at: "2026-06-08T12:00:00+02:00", litres: 10, after: "f1" });
const mine = { car: aCar(), events: [start, early] };
const theirs = { car: aCar(), events: [start, early, late] };
const linksFor = (what: "lastStop" | "all", { car, events } = theirs) =>
	linksOf(app, packedPart(partOf(car, events, { what })), codeBytes);
const hashOf = (link: string) => link.slice(link.indexOf("#"));
const button = (name: string) => screen.getByRole("button", { name });

async function paste(user: Awaited<ReturnType<typeof renderApp>>["user"], text: string): Promise<void> {
	const box = await screen.findByRole("textbox", { name: "Or paste a link" });
	await user.clear(box);
	await user.click(box);
	await user.paste(text);
	await user.click(button("Open the link"));
}

test("a stop by link is shown with what it would change, and kept by one tap alone", async () => {
	const phone = await renderApp({ now, logs: [mine], at: hashOf(linksFor("lastStop")[0]) });
	await screen.findByText("1 entry of “The grey one”, all new.");
	screen.getByText(/^10 L of “E85”/);
	expect(screen.getAllByText(/^\d+(–\d+)? % → \d+(–\d+)? %$/)).toHaveLength(2);
	expect(await phone.store.countEvents("car")).toBe(2);
	await phone.user.click(button("Keep"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect((await phone.events()).map(({ id }) => id)).toEqual(["start", "f1", "f2"]);
	expect(await phone.store.draft("take")).toBeUndefined();
});

test("“Don’t keep it” forgets the entries and changes nothing", async () => {
	const phone = await renderApp({ now, logs: [mine], at: hashOf(linksFor("lastStop")[0]) });
	await phone.user.click(await screen.findByRole("button", { name: "Don’t keep it" }));
	await waitFor(() => expect(location.hash).toBe("#/take"));
	await screen.findByRole("heading", { name: "Scan or open" });
	expect(await phone.store.countEvents("car")).toBe(2);
	expect(await phone.store.draft("take")).toBeUndefined();
});

test("codes are taken in any order, over a restart, and said to be known", async () => {
	const many = Array.from({ length: 4 }, (_, i) =>
		aFill({ id: `m${i}`, stop: `s${i}`, at: `2026-05-${10 + i}T12:00:00+02:00`, place: `Ж${i}`.repeat(100) }),
	);
	const links = linksFor("all", { car: aCar(), events: [start, ...many] });
	expect(links.length).toBeGreaterThan(2);
	const phone = await renderApp({ now, at: "#/take" });
	await paste(phone.user, links[1]);
	await screen.findByText(`1 of ${links.length} codes are here.`);
	await paste(phone.user, links[1]);
	await screen.findByText("This code was here already.");
	const again = await phone.restart();
	await screen.findByText(`1 of ${links.length} codes are here.`);
	await paste(again.user, links.toReversed().join("\n"));
	await screen.findByText("5 entries of “The grey one”, all new.");
	screen.getByText("This car is new on this phone.");
	await again.user.click(button("Keep"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect(await again.store.countEvents("car")).toBe(5);
});

test("settings that differ are shown with the one that counts, on whichever phone", async () => {
	const changed = { name: "2026-06-09T12:00:00Z" };
	const part = { car: aCar({ name: "Wagon", tank: { capacityL: 50 }, changed }), events: theirs.events };
	const phone = await renderApp({ now, logs: [mine], at: hashOf(linksFor("lastStop", part)[0]) });
	await screen.findByRole("heading", { name: "Settings that differ" });
	screen.getByText("Name: “The grey one” here, “Wagon” there. The other phone’s counts, on both.");
	screen.getByText("Tank: “58 L” here, “50 L” there. This phone’s counts, on both.");
	await phone.user.click(button("Keep"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect(await phone.store.cars()).toEqual([aCar({ name: "Wagon", changed })]);
});

test("a log in a file is looked at before it is kept, and one that is none is refused with a reason", async () => {
	const phone = await renderApp({ now, logs: [mine], at: "#/take" });
	await screen.findByRole("heading", { name: "Scan or open" });
	const file = (text: string) => new File([text], "log.txt", { type: "text/plain" });
	await phone.user.upload(screen.getByLabelText("Open a file"), file('{"format": "heeltap-log", "version": 9}'));
	expect((await screen.findByRole("alert")).textContent).toMatch(/newer version of the app.* Nothing was changed\.$/);
	await phone.user.upload(screen.getByLabelText("Open a file"), file("hello"));
	await screen.findByText(
		"This says “hello”, which is no calibration card and no entries of Heeltap. Nothing was changed.",
	);
	await phone.user.upload(screen.getByLabelText("Open a file"), file(formatLog(theirs)));
	await screen.findByText("3 entries of “The grey one”, 1 new.");
	expect(await phone.store.countEvents("car")).toBe(2);
	await phone.user.click(button("Keep"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect(await phone.store.countEvents("car")).toBe(3);
});

test("a tank report is said to be one before it is kept as a log, with the way to read it only", async () => {
	const phone = await renderApp({ now, logs: [mine], at: "#/take" });
	const report = reportText(measuredCar("mine", "The red one", 0.45, 1, now), "2026-06-10T09:00:00Z");
	await phone.user.upload(await screen.findByLabelText("Open a file"), new File([report], "report.txt"));
	await screen.findByText(/^This is a tank report, made .*10.*2026/);
	expect(screen.getByRole("link", { name: "Reports of other cars" }).getAttribute("href")).toBe("#/reports");
	expect(await phone.store.countEvents("mine")).toBe(0);
});

test("entries that contradict the log, or name what is not here, are refused with a sentence", async () => {
	const other = { car: aCar(), events: [start, { ...early, litres: 1 } as never, late] };
	const phone = await renderApp({ now, logs: [mine], at: hashOf(linksFor("all", other)[0]) });
	expect((await screen.findByRole("alert")).textContent).toMatch(/The event "f1" is here already with other contents/);
	const elsewhere = { car: aCar({ id: "another" }), events: theirs.events };
	location.hash = hashOf(linksFor("lastStop", elsewhere)[0]);
	await screen.findByText(/^These are some entries of a car that this phone does not have/);
	const e85 = aCalibration({ id: "e85" });
	const flashed = aFlash({ id: "x", at: "2026-06-09T12:00:00Z", calibration: "e85" });
	const withFlash = partOf(aCar({ calibrations: [aCalibration(), e85] }), [...theirs.events, flashed], {
		what: "lastStop",
	});
	const bare = { ...withFlash, car: { ...withFlash.car, calibrations: [] } };
	location.hash = hashOf(linksOf(app, packedPart(bare), codeBytes)[0]);
	await screen.findByText(/^These entries belong to a calibration that this phone does not have/);
	const withVoid = partOf(aCar(), [start, late, aVoid({ id: "v", at: "2026-06-09T12:00:00Z", target: "gone" })], {
		what: "lastStop",
	});
	location.hash = hashOf(linksOf(app, packedPart(withVoid), codeBytes)[0]);
	await screen.findByText(/^These entries take back one that this phone does not have/);
	location.hash = `${hashOf(linksFor("lastStop")[0]).slice(0, -2)}AA`;
	await screen.findByText(/^This is damaged/);
	expect(await phone.store.countEvents("car")).toBe(2);
	expect(await phone.store.cars()).toEqual([aCar()]);
});

test("what is missing in between is said", async () => {
	const reading = aTankReading({ id: "r", at: "2026-06-08T18:00:00+02:00", after: "f2" });
	const part = partOf(aCar(), [...theirs.events, reading], {
		what: "since",
		instant: Date.parse("2026-06-08T15:00:00+02:00"),
	});
	await renderApp({ now, logs: [mine], at: hashOf(linksOf(app, packedPart(part), codeBytes)[0]) });
	await screen.findByText(/^At least 1 entry written before these is missing here/);
});

test("what the other phone was handed is all that it is taken to have", async () => {
	const phone = await renderApp({ now, logs: [theirs], at: "#/hand" });
	await screen.findByText("1 entry in one code.");
	await phone.user.click(button("The other phone has it"));
	await waitFor(() => expect(shownIds()).toEqual(["f1", "start"]));
	await phone.user.click(button("The other phone has it"));
	await screen.findByText("Nothing: the other phone has all there is.");
});

test("the code of the other phone may be of any car that is on this one", async () => {
	const other = { car: aCar({ id: "another", name: "The red one" }), events: [aStart({ id: "s2" })] };
	const code = framed("hand", packedHoldings(holdingsOf(other.car, [])));
	const phone = await renderApp({ now, logs: [mine, other], at: `#/hand/${code}` });
	await phone.model.saveSettings({ activeCar: "car" });
	await waitFor(() => expect(shownIds()).toEqual(["s2"]));
	expect(phone.model.state().car?.id).toBe("another");
});

test("what is opened now is shown, not what was left from before", async () => {
	const phone = await renderApp({ now, logs: [mine], at: hashOf(linksFor("lastStop")[0]) });
	await screen.findByText("1 entry of “The grey one”, all new.");
	location.hash = "#/log";
	await screen.findByText("Ethanol content over time");
	location.hash = `#/take/${framed("take", new Uint8Array(40)).slice(0, -2)}AA`;
	await screen.findByText(/^This is damaged/);
	expect(screen.queryByRole("button", { name: "Keep" })).toBeNull();
	location.hash = "#/take";
	await waitFor(() => expect(location.hash).toBe("#/take"));
	expect(await phone.store.countEvents("car")).toBe(2);
});

test("the screen hands over the last stop, and what is newer once the other has it", async () => {
	const phone = await renderApp({ now, logs: [theirs], at: "#/hand" });
	await screen.findByText("1 entry in one code.");
	expect(shownIds()).toEqual(["f2"]);
	await phone.user.click(screen.getByRole("radio", { name: /^Everything/ }));
	await waitFor(() => expect(shownIds()).toEqual(["f1", "f2", "start"]));
	await phone.user.click(button("The other phone has it"));
	await screen.findByRole("radio", { name: /^Since the last time/ });
	await phone.user.click(screen.getByRole("radio", { name: /^Since the last time/ }));
	await screen.findByText("Nothing: the other phone has all there is.");
	await phone.store.append("car", [aTankReading({ id: "new", at: "2026-06-09T12:00:00Z" })]);
	await waitFor(() => expect(shownIds()).toEqual(["new"]));
});

test("the code of the other phone says exactly what it lacks; of another car it is refused", async () => {
	const code = (car = aCar()) => `#/hand/${framed("hand", packedHoldings(holdingsOf(car, mine.events)))}`;
	await renderApp({ now, logs: [theirs], at: code() });
	await screen.findByText("1 entry in one code.");
	expect(screen.getByRole("radio", { name: /^What the other phone lacks/ })).toHaveProperty("checked", true);
	expect(shownIds()).toEqual(["f2"]);
	location.hash = code(aCar({ id: "another" }));
	await screen.findByText(/^The other phone’s code is of a car that is not on this one/);
});

const shownIds = () => idsIn(document.querySelector(".linktext")?.textContent ?? "");

/** The ids of the entries in a link. */
function idsIn(link: string): string[] {
	const [found] = foundIn(link);
	const collected = found && withPiece(null, found.payload);
	const body = collected?.ok ? wholeOf(collected.value) : null;
	const part = body?.ok ? readPart(body.value) : null;
	return part?.ok ? part.value.events.map(({ id }) => id).sort() : [];
}

test.each([
	["large", "The file is over 12 MB, which no log and no card is: choose another one. Nothing was changed."],
	["full", "The phone had no room to put by what was shared: make some, then share it again. Nothing was changed."],
])("what could not be put by for the app (%s) is told", async (why, sentence) => {
	await renderApp({ now, logs: [mine], at: `#/take/file7-${why}` });
	await screen.findByText(sentence);
});

test("“Back to the tank” leads there", async () => {
	const phone = await renderApp({ now, logs: [theirs], at: hashOf(linksFor("lastStop")[0]) });
	await screen.findByText("There is nothing new in it.");
	await phone.user.click(button("Back to the tank"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
});
