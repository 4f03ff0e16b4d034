import { readFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import { type AddressInfo, connect } from "node:net";
import { extname, join, normalize } from "node:path";
import { gzipSync } from "node:zlib";
import { headers } from "../../src/tools/policy";

const types: Record<string, string> = {
	".css": "text/css; charset=utf-8",
	".html": "text/html; charset=utf-8",
	".js": "text/javascript; charset=utf-8",
	".json": "application/json",
	".png": "image/png",
	".svg": "image/svg+xml",
	".txt": "text/plain; charset=utf-8",
	".webmanifest": "application/manifest+json",
};

const reportPath = "/breaches";

export interface Site {
	readonly origin: string;
	/** Paths asked for, in order. */
	readonly requests: string[];
	/** What browsers have reported as breaches of the policy, by pages and workers alike. */
	readonly breaches: string[];
	/** Serves another folder from now on, as a deploy does. */
	deploy(folder: string): void;
	/** Goes away, cutting open connections. */
	stop(): Promise<void>;
	/** Comes back on the same port. */
	start(): Promise<void>;
}

/**
 * A static host for the built app, as hosts are: text goes out compressed. A missing file is a 404 and never the page. WebSockets
 * are passed on to port `live`.
 */
export async function openSite(dist: string, live?: number): Promise<Site> {
	let folder = dist;
	let port = 0;
	let server: Server | null = null;
	const requests: string[] = [];
	const breaches: string[] = [];

	async function start() {
		const starting = createServer(async (request, response) => {
			const path = decodeURIComponent(new URL(request.url ?? "/", "http://site").pathname);
			requests.push(path);
			if (path === reportPath) {
				breaches.push((await request.toArray()).join(""));
				response.writeHead(204).end();
				return;
			}
			const file = normalize(path.endsWith("/") ? `${path}index.html` : path);
			const body = await readFile(join(folder, file)).catch(() => null);
			// Names under assets/ carry a hash of the content.
			const cache = file.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache";
			const packed = body && /\.(css|html|js|json|svg|txt|webmanifest)$/.test(file) ? gzipSync(body) : null;
			response.writeHead(body ? 200 : 404, {
				...headers,
				"Content-Security-Policy": `${headers["Content-Security-Policy"]}; report-uri ${reportPath}`,
				"Content-Type": body ? (types[extname(file)] ?? "application/octet-stream") : "text/plain",
				"Cache-Control": body ? cache : "no-store",
				...(packed && { "Content-Encoding": "gzip" }),
			});
			response.end(packed ?? body ?? "no such file");
		});
		if (live !== undefined)
			starting.on("upgrade", ({ url, headers, rawHeaders }, socket, head) => {
				const there = connect(live, "127.0.0.1");
				const lines = rawHeaders.flatMap((name, i) => (i % 2 === 0 ? [`${name}: ${rawHeaders[i + 1]}`] : []));
				there.write(`GET ${url} HTTP/1.1\r\n${lines.join("\r\n")}\r\n\r\n`);
				there.write(head);
				requests.push(`${url} ${headers.upgrade}`);
				socket.pipe(there).pipe(socket);
				for (const end of [socket, there]) end.on("error", () => end.destroy());
				socket.on("close", () => there.destroy());
				there.on("close", () => socket.destroy());
			});
		await new Promise<void>((done) => starting.listen(port, "127.0.0.1", done));
		port = (starting.address() as AddressInfo).port;
		server = starting;
	}
	async function stop() {
		const stopping = server;
		server = null;
		if (!stopping) return;
		const closed = new Promise((done) => stopping.close(done));
		stopping.closeAllConnections();
		await closed;
	}

	await start();
	return {
		origin: `http://localhost:${port}`,
		requests,
		breaches,
		deploy: (next) => {
			folder = next;
		},
		stop,
		start,
	};
}
