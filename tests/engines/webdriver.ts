/** A client of WebDriver (W3C), over the few commands that the journeys need. */

export interface Session {
	/** A command of the session; `path` begins behind its id. Throws with the driver's words. */
	send<Answer = unknown>(method: "GET" | "POST" | "DELETE", path: string, body?: object): Promise<Answer>;
	/** Element by CSS; throws where there is none. */
	element(css: string): Promise<string>;
	/** Runs the body of an async function in the page. */
	script<Answer>(body: string): Promise<Answer>;
}

/** Begins a session at a driver program, which may only just have been started. */
export async function openSession(driver: string, capabilities: object): Promise<Session> {
	const begin = () => send<{ sessionId: string }>("POST", `${driver}/session`, { capabilities }, startsWithinMs);
	const { sessionId } = await untilAnswered(driver).then(begin);
	const session: Session = {
		send: (method, path, body) => send(method, `${driver}/session/${sessionId}${path}`, body),
		async element(css) {
			const found = await session.send<object>("POST", "/element", { using: "css selector", value: css });
			return Object.values(found)[0];
		},
		async script<Answer>(body: string) {
			const script = `const done = arguments[0];
				(async () => { ${body} })().then((value) => done({ value }), (error) => done({ error: String(error) }));`;
			const told = await session.send<{ value: Answer; error?: string }>("POST", "/execute/async", {
				script,
				args: [],
			});
			if (told.error !== undefined) throw new Error(told.error);
			return told.value;
		},
	};
	await session.send("POST", "/timeouts", { script: 120_000, pageLoad: 60_000 });
	return session;
}

/** Longer than a driver's own limits: past it the driver itself hangs. */
const answersWithinMs = 180_000;

async function send<Answer>(
	method: string,
	address: string,
	body?: object,
	withinMs = answersWithinMs,
): Promise<Answer> {
	const response = await fetch(address, {
		method,
		body: method === "POST" ? JSON.stringify(body ?? {}) : null,
		signal: AbortSignal.timeout(withinMs),
	});
	const { value } = (await response.json()) as { value: Answer & { error?: string; message?: string } };
	if (!response.ok) throw new Error(`${value.error}: ${value.message}`);
	return value;
}

/** A browser that dies as it starts leaves its driver waiting for ever. */
const startsWithinMs = 60_000;

async function untilAnswered(driver: string): Promise<void> {
	const deadline = Date.now() + startsWithinMs;
	for (;;) {
		try {
			await fetch(`${driver}/status`);
			return;
		} catch (error) {
			if (Date.now() > deadline) throw new Error(`no driver answers at ${driver}`, { cause: error });
			await new Promise((done) => setTimeout(done, 50));
		}
	}
}
