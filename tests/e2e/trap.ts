import { createServer } from "node:http";
import type { AddressInfo } from "node:net";

/** What browsers ask for themselves, whatever page is open. Pages that do are seen by the requests of their own. */
const browsersOwn = /(^|\.)((google|googleapis|gstatic|gvt1)\.com|(mozilla|firefox)\.(com|org|net)|mozgcp\.net)$/;

export interface Trap {
	readonly port: number;
	/** Addresses that somebody asked for. */
	readonly hits: readonly string[];
	close(): void;
}

/** A proxy that answers nothing and remembers who asked. */
export async function openTrap(): Promise<Trap> {
	const hits: string[] = [];
	const hit = (address: string) => {
		if (!browsersOwn.test(new URL(address).hostname)) hits.push(address);
	};
	const server = createServer((request, response) => {
		hit(new URL(request.url ?? "", "http://unknown").href);
		response.writeHead(502).end();
	});
	server.on("connect", (request, socket) => {
		hit(`https://${request.url}`);
		socket.on("error", () => {});
		socket.end("HTTP/1.1 502 Bad Gateway\r\n\r\n");
	});
	await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
	const close = () => {
		server.close();
		server.closeAllConnections();
	};
	return { port: (server.address() as AddressInfo).port, hits, close };
}
