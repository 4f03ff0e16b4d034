/** The host's own keys and tokens: operator, the account that keeps the stream, and the account of the cars. */
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { encodeAccount, encodeOperator, encodeUser, newScopedSigner } from "@nats-io/jwt";
import { createAccount, createOperator, createUser, fromSeed, type KeyPair } from "@nats-io/nkeys";
import { doors, rights } from "../../live/subjects";

export interface HostKeys {
	readonly operator: KeyPair;
	readonly system: KeyPair;
	readonly store: KeyPair;
	readonly cars: KeyPair;
	/** Signs the cars' credentials, which then have its rights and no others. */
	readonly signer: KeyPair;
}

const names = ["operator", "system", "store", "cars", "signer"] as const;

/** Those in the folder; missing ones are made. */
export function keysIn(folder: string): HostKeys {
	mkdirSync(folder, { recursive: true, mode: 0o700 });
	const path = join(folder, "keys.json");
	const known = existsSync(path) ? (JSON.parse(readFileSync(path, "utf8")) as Record<string, string>) : {};
	const made = (name: (typeof names)[number]): KeyPair => {
		const seed = known[name];
		if (seed !== undefined) return fromSeed(new TextEncoder().encode(seed));
		const pair = name === "operator" ? createOperator() : createAccount();
		known[name] = new TextDecoder().decode(pair.getSeed());
		return pair;
	};
	const before = names.every((name) => known[name] !== undefined);
	const keys = Object.fromEntries(names.map((name) => [name, made(name)])) as unknown as HostKeys;
	if (!before) writeSecret(path, `${JSON.stringify(known, null, "\t")}\n`);
	return keys;
}

/** For nobody but its owner, whatever the umask is. */
export function writeSecret(path: string, text: string): void {
	writeFileSync(path, text, { mode: 0o600 });
	chmodSync(path, 0o600);
}

export interface Tokens {
	readonly operator: string;
	readonly system: string;
	readonly store: string;
	readonly cars: string;
}

/** The operator's is written once: a server that runs takes new accounts from a reload, but no new operator. */
async function operatorToken(folder: string, { operator, system }: HostKeys): Promise<string> {
	const path = join(folder, "operator.jwt");
	if (!existsSync(path))
		writeSecret(path, await encodeOperator("heeltap", operator, { system_account: system.getPublicKey() }));
	return readFileSync(path, "utf8");
}

export async function tokensOf(folder: string, keys: HostKeys, revoked: Revoked): Promise<Tokens> {
	const { operator, system, store, cars, signer } = keys;
	const bySigner = { signer: operator };
	const without = { disk_storage: 0, mem_storage: 0, streams: 0, consumer: 0 };
	const everything = { disk_storage: -1, mem_storage: -1, streams: -1, consumer: -1 };
	const role = newScopedSigner(signer, "car", {
		pub: { allow: rights.publish, deny: [] },
		sub: { allow: rights.subscribe, deny: [] },
		// An inbox for answers, and one for each reading.
		subs: 10,
		data: -1,
		payload: -1,
	});
	return {
		operator: await operatorToken(folder, keys),
		system: await encodeAccount("system", system, { limits: { ...unlimited, ...without } }, bySigner),
		store: await encodeAccount(
			"store",
			store,
			{
				limits: { ...unlimited, ...everything },
				exports: doors.map(({ name, subject, answers }) => ({
					name,
					subject,
					type: "service" as never,
					response_type: answers as never,
				})) as never,
			},
			bySigner,
		),
		cars: await encodeAccount(
			"cars",
			cars,
			{
				limits: { ...unlimited, ...without },
				signing_keys: [role],
				imports: doors.map((door) => ({
					name: door.name,
					subject: door.subject,
					account: store.getPublicKey(),
					type: "service" as never,
					...("local" in door && { local_subject: door.local }),
				})) as never,
				...(Object.keys(revoked).length > 0 && { revocations: revoked }),
			},
			bySigner,
		),
	};
}

/** Public keys of cars' users, and the second up to which what was issued to them no longer holds. */
export type Revoked = Readonly<Record<string, number>>;

const unlimited = {
	subs: -1,
	conn: -1,
	leaf: -1,
	imports: -1,
	exports: -1,
	data: -1,
	payload: -1,
	wildcards: true,
};

/** For the host's own commands: the account of the stream, for as long as they run. */
export async function adminCredentials({
	store,
}: HostKeys): Promise<{ readonly jwt: string; readonly seed: Uint8Array }> {
	const user = createUser();
	const everywhere = { pub: { allow: [">"] }, sub: { allow: [">"] } };
	const jwt = await encodeUser("host", user, store, everywhere as never, {
		exp: Math.floor(Date.now() / 1000) + 3_600,
	});
	return { jwt, seed: user.getSeed() };
}
