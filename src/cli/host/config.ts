/** The server's configuration: one short file. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { HostKeys, Tokens } from "./keys";

/** What the host has chosen, kept beside the keys. */
export interface Choices {
	/** Where phones find the server: `wss://cars.example/live`. */
	readonly url: string;
	/** Where it listens for them, behind what does TLS. */
	readonly websocket: string;
	/** Where it listens for the host's own commands. */
	readonly commands: string;
	/** Most that it may fill of the disk. */
	readonly disk: string;
	/** How many servers keep every entry. */
	readonly replicas: number;
}

export const firstChoices: Omit<Choices, "url"> = {
	websocket: "127.0.0.1:8080",
	commands: "127.0.0.1:4222",
	disk: "10G",
	replicas: 1,
};

export function readChoices(folder: string): Choices | null {
	const path = join(folder, "host.json");
	return existsSync(path) ? { ...firstChoices, ...JSON.parse(readFileSync(path, "utf8")) } : null;
}

export function writeChoices(folder: string, choices: Choices): void {
	writeFileSync(join(folder, "host.json"), `${JSON.stringify(choices, null, "\t")}\n`, { mode: 0o600 });
}

export const configFile = "nats-server.conf";

export function writeConfig(folder: string, choices: Choices, keys: HostKeys, tokens: Tokens): void {
	writeFileSync(join(folder, configFile), configText(folder, choices, keys, tokens), { mode: 0o600 });
}

export function configText(folder: string, choices: Choices, keys: HostKeys, tokens: Tokens): string {
	return `# Made by "npm run host"; changes here are lost with its next run. More goes into a file that includes this one.
server_name: ${choices.replicas > 1 ? "$HEELTAP_SERVER" : "heeltap"}
listen: "${choices.commands}"
# Phones come here. TLS is done by the web server before it, which passes ${choices.url} on.
websocket { listen: "${choices.websocket}", no_tls: true, compression: false }
jetstream { store_dir: ${JSON.stringify(join(resolve(folder), "store"))}, max_file_store: ${choices.disk}, max_memory_store: 64M }
max_payload: 128K
max_control_line: 4K
operator: ${tokens.operator}
system_account: ${keys.system.getPublicKey()}
resolver: MEMORY
resolver_preload {
  ${keys.system.getPublicKey()}: ${tokens.system}
  ${keys.store.getPublicKey()}: ${tokens.store}
  ${keys.cars.getPublicKey()}: ${tokens.cars}
}
`;
}
