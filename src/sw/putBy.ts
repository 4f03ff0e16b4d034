/** Puts by what another app shares, and says under which address the page is told of it. */

/** The page looks here: src/app/shared.ts. */
const cacheName = "heeltap-shared";
/** More than any log or picture that is handed over; the page is stricter. */
const largest = 40_000_000;

interface Surroundings {
	readonly caches: Pick<CacheStorage, "open" | "delete">;
	/** Where the app lives. */
	readonly scope: string;
	readonly now: number;
}

/** The fragment to go to. A number of its own, or a second share would not be noticed by a page that is open already. */
export async function received(request: Request, { caches, scope, now }: Surroundings): Promise<string> {
	const found = await sharedIn(request).catch(() => []);
	const [only] = found;
	if (found.length === 1 && !fits(only)) return `#/take/file${now}-large`;
	try {
		// What was shared before and is still here would be taken for a part of it.
		await caches.delete(cacheName);
		if (found.length > 0) {
			const cache = await caches.open(cacheName);
			for (const [i, each] of found.entries()) await cache.put(`${scope}shared/${i}`, responseOf(each));
		}
	} catch {
		await caches.delete(cacheName).catch(() => {});
		return `#/take/file${now}-full`;
	}
	return `#/${found.length > 1 ? "reports" : "take"}/file${now}`;
}

/** All files, or else what was written. */
async function sharedIn(request: Request): Promise<Blob[]> {
	const form = await request.formData();
	// One without a name and contents is none; an empty one is told of by its name.
	const files = form.getAll("file").filter((file) => file instanceof File && (file.size > 0 || file.name !== ""));
	if (files.length > 0) return files as File[];
	const texts = ["url", "text", "title"].map((name) => form.get(name)).filter((value) => typeof value === "string");
	return texts.some((text) => text !== "") ? [new Blob([texts.join("\n")], { type: "text/plain" })] : [];
}

const fits = ({ size }: Blob) => size <= largest;

/** With its name; one that is too large is put by as its name alone, so that it can be told of. */
function responseOf(found: Blob): Response {
	const headers = { "x-name": encodeURIComponent(found instanceof File ? found.name : "") };
	const type: Record<string, string> = found.type === "" ? {} : { "content-type": found.type };
	return fits(found)
		? new Response(found, { headers: { ...headers, ...type } })
		: new Response("", { headers: { ...headers, "x-too-large": "1" } });
}
