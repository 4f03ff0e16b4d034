/**
 * Names on the server, for phones and for the host. Cars live in an account without JetStream of its own and reach the stream
 * by three doors of the account that has it. In one account, anyone who may read could have the server answer to
 * `$JS.API.STREAM.DELETE.…` with an empty message, which it would obey (tried on nats-server 2.9.10).
 */
export const stream = "HEELTAP";

const create = `$JS.API.CONSUMER.CREATE.${stream}`;
const next = `$JS.API.CONSUMER.MSG.NEXT.${stream}`;

export function subjectOf(token: string): string {
	return `heeltap.${token}`;
}

/** Begins to read a car; the server holds the filter in a request against that in its subject. */
export function openSubject(consumer: string, token: string): string {
	return `open.${consumer}.${token}`;
}

export function nextSubject(consumer: string): string {
	return `next.${consumer}`;
}

export function inboxOf(token: string): string {
	return `_H.${token}`;
}

/** As the account of the stream offers them and that of the cars takes them. */
export const doors = [
	{ name: "send", subject: "heeltap.*", answers: "Singleton" },
	{ name: "open", subject: `${create}.*.heeltap.*`, local: "open.$1.$2", answers: "Singleton" },
	{ name: "next", subject: `${next}.*`, local: "next.$1", answers: "Stream" },
] as const;

/** What a car's credentials allow; the server puts the token in. */
export const rights = {
	publish: [subjectOf("{{name()}}"), openSubject("*", "{{name()}}"), nextSubject("*")],
	subscribe: [`${inboxOf("{{name()}}")}.>`],
};
