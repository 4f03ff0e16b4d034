/** The host's command, as far as it goes without a server; the rest is in tests/live. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { main } from "../../src/cli/host";
import { foundIn } from "../../src/share/link";
import { readLiveCode } from "../../src/share/liveCode";

let folder: string;
let [said, complained]: string[][] = [];

beforeEach(() => {
	folder = join(mkdtempSync(join(tmpdir(), "heeltap-host-")), "host");
	[said, complained] = [[], []];
	vi.spyOn(console, "log").mockImplementation((line) => void said.push(String(line)));
	vi.spyOn(console, "error").mockImplementation((line) => void complained.push(String(line)));
});
afterEach(() => {
	vi.restoreAllMocks();
	rmSync(join(folder, ".."), { recursive: true, force: true });
});

const prepared = () => main(["prepare", folder, "--url", "wss://cars.example/live"]);

test("what is prepared is for its owner alone, and the same when it is prepared again", async () => {
	expect(await prepared()).toBe(0);
	expect(said).toEqual([`nats-server -c ${join(folder, "nats-server.conf")}`]);
	expect(statSync(folder).mode & 0o777).toBe(0o700);
	for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).mode & 0o777, name).toBe(0o600);
	const keys = readFileSync(join(folder, "keys.json"), "utf8");
	expect(await main(["prepare", folder, "--disk", "20G"])).toBe(0);
	expect(readFileSync(join(folder, "keys.json"), "utf8")).toBe(keys);
	const config = readFileSync(join(folder, "nats-server.conf"), "utf8");
	expect(config).toContain("max_file_store: 20G");
	for (const seed of Object.values(JSON.parse(keys) as Record<string, string>)) expect(config).not.toContain(seed);
	expect(config.split("\n").length).toBeLessThan(20);
});

test("invitations open one car each, lead to the app, and can be told apart later", async () => {
	await prepared();
	said = [];
	expect(await main(["invite", folder, "3", "--days", "30", "--app", "https://app.example/heeltap/"])).toBe(0);
	const codes = said.map((line) => {
		const [found] = foundIn(line);
		const code = readLiveCode(found.payload);
		if (!code.ok || code.value.what !== "invitation") throw new Error(line);
		return code.value.access;
	});
	expect(new Set(codes.map(({ token }) => token)).size).toBe(3);
	for (const { server, ends, issued } of codes)
		expect([server, (ends ?? 0) - issued]).toEqual(["wss://cars.example/live", 30 * 86_400]);
	for (const line of said) expect(line).toMatch(/^U[A-Z2-7]{55} https:\/\/app\.example\/heeltap\/#\/live\/[\w-]+$/);
	// Nothing that opens a car stays with the host.
	const kept = readFileSync(join(folder, "invitations.csv"), "utf8");
	expect(
		kept
			.split("\n")
			.filter(Boolean)
			.map((line) => line.split(",")[0]),
	).toEqual(said.map((line) => line.split(" ")[0]));
	for (const line of said) expect(kept).not.toContain(line.slice(-40));
});

test("what can't be done is said in a sentence, and nothing is made", async () => {
	const refusals: [string[], RegExp][] = [
		[[], /^npm run host -- start FOLDER/],
		[["dance", "x"], /^npm run host -- start FOLDER/],
		[["invite", folder], /holds no host\.json/],
		[["prepare", folder], /--url must be where phones find the server/],
		[["prepare", folder, "--url", "ws://cars.example/live"], /--url must be where phones find the server/],
		[["prepare", folder, "--url", "https://cars.example/"], /--url must be where phones find the server/],
		[["prepare", folder, "--url", "wss://cars.example", "--replicas", "2"], /--replicas must be 1, 3 or 5/],
		[["prepare", folder, "--colour", "red"], /colour/],
	];
	for (const [args, sentence] of refusals) {
		complained = [];
		expect(await main(args), args.join(" ")).toBe(2);
		expect(complained.join("\n")).toMatch(sentence);
	}
	await prepared();
	for (const args of [
		["invite", folder, "none"],
		["invite", folder, "1", "--days", "-1"],
		["revoke", folder, "me"],
	])
		expect(await main(args)).toBe(2);
	expect(readdirSync(folder).sort()).toEqual(["host.json", "keys.json", "nats-server.conf", "operator.jwt"]);
});
