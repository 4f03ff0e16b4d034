/** One car's credentials open that car, and nothing else: tried on the real server, by all that its API offers. */
import type { NatsConnection } from "@nats-io/nats-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { main } from "../../src/cli/host";
import { inboxOf, nextSubject, openSubject, stream, subjectOf } from "../../src/live/subjects";
import type { Access } from "../../src/share/liveCode";
import { type NatsServer, openNatsServer } from "./natsServer";
import { asked, rawClient } from "./rawClient";

let server: NatsServer;
let [mine, theirs]: Access[] = [];
let [own, other]: NatsConnection[] = [];

beforeAll(async () => {
	server = await openNatsServer();
	[mine, theirs] = [server.invite().access, server.invite().access];
	[own, other] = [await rawClient(mine), await rawClient(theirs)];
	for (let i = 0; i < 3; i++) await asked(other, subjectOf(theirs.token), `theirs ${i}`);
	await asked(own, subjectOf(mine.token), "mine");
});
afterAll(async () => {
	await Promise.all([own?.close(), other?.close()]);
	await server?.remove();
});

const pass = (ms: number) => new Promise((passed) => setTimeout(passed, ms));
const reading = (name: string, filter: unknown, more = {}) => ({
	stream_name: stream,
	config: {
		name,
		...(filter !== undefined && { filter_subject: filter }),
		deliver_policy: "all",
		ack_policy: "none",
		inactive_threshold: 60e9,
		mem_storage: true,
		...more,
	},
});

test("its own car can be written and read", async () => {
	expect(await asked(own, subjectOf(mine.token), "again")).toMatch(/"seq":5/);
	expect(await asked(own, openSubject("a", mine.token), reading("a", subjectOf(mine.token)))).toMatch(
		/"num_pending":2/,
	);
	const read: string[] = [];
	own.subscribe(`${inboxOf(mine.token)}.r`, { callback: (_, message) => void read.push(message.string()) });
	own.publish(nextSubject("a"), JSON.stringify({ batch: 10, expires: 1e9 }), { reply: `${inboxOf(mine.token)}.r` });
	await expect.poll(() => read.slice(0, 2)).toEqual(["mine", "again"]);
});

test("another car can be neither written, nor read by any filter", async () => {
	const before = await server.facts();
	expect(await asked(own, subjectOf(theirs.token), "x")).toMatch(/Permissions Violation/);
	expect(await asked(own, openSubject("b", theirs.token), reading("b", subjectOf(theirs.token)))).toMatch(
		/Permissions/,
	);
	for (const filter of [subjectOf(theirs.token), "heeltap.*", "heeltap.>", ">", "", undefined])
		expect(await asked(own, openSubject("b", mine.token), reading("b", filter)), String(filter)).toMatch(
			/did not match|filter/,
		);
	const several = { filter_subjects: [subjectOf(mine.token), subjectOf(theirs.token)] };
	expect(await asked(own, openSubject("c", mine.token), reading("c", undefined, several))).toMatch(
		/did not match|filter/,
	);
	expect(await asked(own, openSubject("*", mine.token), reading("d", subjectOf(theirs.token)))).toMatch(
		/error|Perm|respond/,
	);
	expect(await server.facts()).toEqual(before);
});

test("nothing can be listened to but its own inbox", async () => {
	const heard: string[] = [];
	const subjects = [">", "heeltap.>", subjectOf(theirs.token), subjectOf(mine.token), `${inboxOf(theirs.token)}.>`];
	for (const subject of [...subjects, "_H.>", "_INBOX.>", "$SYS.>", "$JS.>", "open.>", "next.>"])
		own.subscribe(subject, { callback: (error, message) => void (error ?? heard.push(message.subject)) });
	await asked(other, subjectOf(theirs.token), "theirs, listened for");
	await asked(other, openSubject("e", theirs.token), reading("e", subjectOf(theirs.token)));
	await pass(300);
	expect(heard).toEqual([]);
});

test("nothing of the stream or the server can be listed, changed or deleted", async () => {
	const before = await server.facts();
	const names = [
		...["INFO", "DELETE", "PURGE", "UPDATE", "CREATE", "MSG.GET", "MSG.DELETE", "SNAPSHOT", "RESTORE"].map(
			(what) => `$JS.API.STREAM.${what}.${stream}`,
		),
		...["NAMES", "LIST", "TEMPLATE.NAMES"].map((what) => `$JS.API.STREAM.${what}`),
		...["NAMES", "LIST", "CREATE"].map((what) => `$JS.API.CONSUMER.${what}.${stream}`),
		...["INFO", "DELETE", "MSG.NEXT", "DURABLE.CREATE"].map((what) => `$JS.API.CONSUMER.${what}.${stream}.e`),
		`$JS.API.CONSUMER.CREATE.${stream}.e.${subjectOf(theirs.token)}`,
		`$JS.API.DIRECT.GET.${stream}`,
		`$JS.API.DIRECT.GET.${stream}.${subjectOf(theirs.token)}`,
		"$JS.API.INFO",
		"$JS.API.ACCOUNT.PURGE.X",
		`$JS.API.STREAM.LEADER.STEPDOWN.${stream}`,
		`$JS.API.META.LEADER.STEPDOWN`,
		"$SYS.REQ.SERVER.PING",
		"$SYS.REQ.USER.INFO",
		"$SYS.REQ.ACCOUNT.PING.CONNZ",
	];
	for (const name of names) expect(await asked(own, name), name).toMatch(/Permissions Violation/);
	expect(await asked(own, "$JS.ACK.HEELTAP.e.1.1.1.1.1")).toMatch(/Permissions Violation/);
	expect(await server.facts()).toEqual(before);
});

/** A server answers in its own name: who may ask it could have it delete, by where the answer is to go (seen in one account). */
test("where answers are sent to, nothing is obeyed", async () => {
	await asked(own, subjectOf(mine.token), "");
	await asked(own, subjectOf(mine.token), "{}");
	const { messages } = await server.facts();
	const goals = [
		`$JS.API.STREAM.DELETE.${stream}`,
		`$JS.API.STREAM.PURGE.${stream}`,
		`$JS.API.CONSUMER.DELETE.${stream}.e`,
		`$JS.API.STREAM.INFO.${stream}`,
	];
	for (const [i, reply] of goals.entries()) {
		await asked(own, openSubject(`t${i}`, mine.token), reading(`t${i}`, subjectOf(mine.token)));
		own.publish(nextSubject(`t${i}`), JSON.stringify({ batch: 9, expires: 5e8 }), { reply });
		const pushed = { deliver_subject: reply, mem_storage: false };
		await asked(own, openSubject(`p${i}`, mine.token), reading(`p${i}`, subjectOf(mine.token), pushed));
		own.publish(subjectOf(mine.token), "", { reply });
		own.publish(openSubject(`q${i}`, mine.token), JSON.stringify(reading(`q${i}`, subjectOf(mine.token))), { reply });
	}
	await pass(800);
	expect((await server.facts()).messages).toBe(messages + goals.length);
	expect(await asked(other, openSubject("f", theirs.token), reading("f", subjectOf(theirs.token)))).toMatch(
		/"num_pending":4/,
	);
});

test("headers that replace what is there are refused", async () => {
	const { headers } = await import("@nats-io/nats-core");
	for (const what of ["all", "sub"]) {
		const told = headers();
		told.set("Nats-Rollup", what);
		const answer = await own.request(subjectOf(mine.token), "x", { timeout: 2_000, headers: told });
		expect(answer.string()).toMatch(/rollup not permitted/);
	}
});

test("claims that were changed, that have ended, or of another host, are not let in", async () => {
	const refused = (access: Access, claims?: Partial<Access>) =>
		expect(rawClient(access, claims)).rejects.toThrow(/[Aa]uthorization|expired/);
	await refused(mine, { token: theirs.token });
	await refused(mine, { ends: mine.issued + 1e6 });
	await refused({ ...mine, seed: theirs.seed });
	await refused(server.invite({ ends: Math.floor(Date.now() / 1000) - 10 }).access);
	const elsewhere = await openNatsServer();
	await refused({ ...elsewhere.invite().access, server: mine.server });
	await elsewhere.remove();
});

test("an invitation that was taken back no longer opens anything", async () => {
	const { access, user } = server.invite();
	const nats = await rawClient(access);
	expect(await asked(nats, subjectOf(access.token), "x")).toMatch(/"seq"/);
	expect(await main(["revoke", server.folder, user])).toBe(0);
	// As `nats-server --signal reload` does.
	process.kill(server.processId() ?? 0, "SIGHUP");
	await Promise.race([nats.closed(), pass(5_000).then(() => expect.fail("it is still connected"))]);
	await expect(rawClient(access)).rejects.toThrow(/[Aa]uthorization/);
	await (await rawClient(mine)).close();
});
