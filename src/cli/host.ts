/** For whoever runs a server for replication: its keys, its configuration, its stream, and invitations for cars. */
import { spawn } from "node:child_process";
import { appendFileSync, existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { isServer } from "../share/liveCode";
import { type Choices, configFile, firstChoices, readChoices, writeChoices, writeConfig } from "./host/config";
import { invitationFor } from "./host/invitation";
import { type HostKeys, keysIn, type Revoked, tokensOf, writeSecret } from "./host/keys";
import { ensureStream } from "./host/stream";

const usage = `npm run host -- start FOLDER --url wss://HOST/PATH [--websocket ADDRESS:PORT] [--commands ADDRESS:PORT] [--disk 10G]
    makes what is missing (keys, ${configFile}, the stream) and runs nats-server until it is stopped
npm run host -- prepare FOLDER --url … [--replicas 3]
    the same without running the server: for systemd, or for a cluster
npm run host -- stream FOLDER
    creates the stream on a running server, or brings it up to date, and says what it holds
npm run host -- invite FOLDER [N] [--app https://APP/] [--days D]
    one invitation a car: a link each, good for D days, or until it is taken back
npm run host -- revoke FOLDER USER
    takes one back, by what "invite" called it; reload the server after it (nats-server --signal reload)`;

export async function main(args: readonly string[]): Promise<number> {
	const options = { url: text, websocket: text, commands: text, disk: text, replicas: text, app: text, days: text };
	try {
		const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
		const [command, folder, more] = positionals;
		if (folder === undefined) throw new UsageError(usage);
		switch (command) {
			case "start":
				return await start(folder, values);
			case "prepare":
				await prepare(folder, values);
				console.log(`nats-server -c ${join(folder, configFile)}`);
				return 0;
			case "stream": {
				const choices = chosen(folder);
				const { messages, bytes } = await ensureStream(choices, keysIn(folder)).catch((error: Error) => {
					throw new UsageError(`the server at ${choices.commands} does not do it (${error.message}): is it running?`);
				});
				console.log(`${messages} messages, ${bytes} bytes`);
				return 0;
			}
			case "invite":
				return invite(folder, Number(more ?? 1), values);
			case "revoke":
				return await revoke(folder, more ?? "");
			default:
				throw new UsageError(usage);
		}
	} catch (error) {
		const said =
			error instanceof UsageError || (error as { readonly code?: string }).code?.startsWith("ERR_PARSE_ARGS");
		if (!said) throw error;
		console.error((error as Error).message);
		return 2;
	}
}

const text = { type: "string" } as const;

type Values = Readonly<
	Partial<Record<"url" | "websocket" | "commands" | "disk" | "replicas" | "app" | "days", string>>
>;

class UsageError extends Error {}

function chosen(folder: string): Choices {
	const choices = readChoices(folder);
	if (!choices)
		throw new UsageError(`${folder} holds no host.json: run "npm run host -- prepare ${folder} --url …" first`);
	return choices;
}

/** Keys and choices that are there stay; the configuration is written anew from them. */
export async function prepare(folder: string, values: Values): Promise<{ choices: Choices; keys: HostKeys }> {
	const keys = keysIn(folder);
	const { url, websocket, commands, disk, replicas } = values;
	const before = readChoices(folder);
	const address = url ?? before?.url;
	if (address === undefined || !isServer(address) || !(address.startsWith("wss:") || isHere(address)))
		throw new UsageError(`--url must be where phones find the server, like wss://cars.example/live, got ${address}`);
	const choices: Choices = {
		...firstChoices,
		...before,
		url: address,
		...(websocket !== undefined && { websocket }),
		...(commands !== undefined && { commands }),
		...(disk !== undefined && { disk }),
		...(replicas !== undefined && { replicas: Number(replicas) }),
	};
	if (![1, 3, 5].includes(choices.replicas)) throw new UsageError(`--replicas must be 1, 3 or 5, got ${replicas}`);
	writeChoices(folder, choices);
	writeConfig(folder, choices, keys, await tokensOf(folder, keys, revokedIn(folder)));
	return { choices, keys };
}

/** Without TLS only where no network is between. */
function isHere(address: string): boolean {
	return ["localhost", "127.0.0.1", "[::1]"].includes(new URL(address).hostname);
}

async function start(folder: string, values: Values): Promise<number> {
	const { choices, keys } = await prepare(folder, values);
	// Debian's is where only root looks.
	const env = { ...process.env, PATH: `${process.env.PATH}:/usr/sbin:/usr/local/sbin` };
	const server = spawn("nats-server", ["-c", join(folder, configFile)], { stdio: "inherit", env });
	const ended = new Promise<number>((done, fail) => {
		server.once("exit", (code) => done(code ?? 0));
		server.once("error", () =>
			fail(new UsageError("nats-server is not installed: on Debian, apt install nats-server")),
		);
	});
	for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => server.kill(signal));
	await Promise.race([
		ended,
		ensureStream(choices, keys).then(({ messages }) => console.log(`Ready: ${messages} messages.`)),
	]);
	return ended;
}

const issuedFile = "invitations.csv";

function invite(folder: string, count: number, { app, days }: Values): number {
	if (!(Number.isInteger(count) && count > 0))
		throw new UsageError(`how many invitations must be a whole number, got ${count}`);
	if (days !== undefined && !(Number(days) > 0)) throw new UsageError(`--days must be more than none, got ${days}`);
	const choices = chosen(folder);
	const keys = keysIn(folder);
	const now = Date.now();
	const ends = days === undefined ? null : Math.floor(now / 1000 + Number(days) * 86_400);
	const page = app ?? `${choices.url.replace(/^ws/, "http").replace(/^(\w+:\/\/[^/]+).*/, "$1")}/`;
	for (let i = 0; i < count; i++) {
		const { user, access, link } = invitationFor(choices, keys, { app: page, now, ends });
		// What takes it back again; the invitation itself is kept nowhere.
		appendFileSync(join(folder, issuedFile), `${user},${access.token},${access.issued},${ends ?? ""}\n`, {
			mode: 0o600,
		});
		console.log(`${user} ${link}`);
	}
	return 0;
}

const revokedFile = "revoked.json";

function revokedIn(folder: string): Revoked {
	const path = join(folder, revokedFile);
	return existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : {};
}

async function revoke(folder: string, user: string): Promise<number> {
	if (!/^U[A-Z2-7]{55}$/.test(user))
		throw new UsageError(`which invitation? Its name begins with U, got ${JSON.stringify(user)}`);
	const choices = chosen(folder);
	const revoked = { ...revokedIn(folder), [user]: Math.floor(Date.now() / 1000) };
	writeSecret(join(folder, revokedFile), `${JSON.stringify(revoked, null, "\t")}\n`);
	const keys = keysIn(folder);
	writeConfig(folder, choices, keys, await tokensOf(folder, keys, revoked));
	console.log("Reload the server: nats-server --signal reload");
	return 0;
}
