import { expect, test } from "vitest";
import { received } from "../../src/sw/putBy";

const scope = "https://host.test/app/";

/** The caches of a phone; `room`: how many more files its disk takes. */
function aPhone(room = Number.POSITIVE_INFINITY) {
	const kept = new Map<string, Response>();
	const cache = {
		async put(address: string, response: Response) {
			if (kept.size >= room) throw new DOMException("full", "QuotaExceededError");
			kept.set(address, response);
		},
	};
	const caches = {
		open: async () => cache,
		async delete() {
			kept.clear();
			return true;
		},
	} as unknown as CacheStorage;
	return { kept, share: (form: FormData, now = 1) => received(requestOf(form), { caches, scope, now }) };
}

const requestOf = (form: FormData) => ({ formData: async () => form }) as Request;

function formOf(...files: readonly File[]): FormData {
	const form = new FormData();
	for (const file of files) form.append("file", file);
	return form;
}

const aFile = (name: string, text = name) => new File([text], name, { type: "text/plain" });
const huge = () => Object.defineProperty(aFile("huge.txt"), "size", { value: 40_000_001 });

test("all files that are shared at once are put by, with their names, and lead to the reports", async () => {
	const phone = aPhone();
	const names = Array.from({ length: 20 }, (_, i) => `bericht ${i} ü.json`);
	expect(await phone.share(formOf(...names.map((name) => aFile(name))), 7)).toBe("#/reports/file7");
	const told = [...phone.kept.values()].map(({ headers }) => decodeURIComponent(headers.get("x-name") ?? ""));
	expect(told).toEqual(names);
	expect(await Promise.all([...phone.kept.values()].map((response) => response.text()))).toEqual(names);
});

test("one file, or what was written, waits to be looked at, and nothing of what was shared before", async () => {
	const phone = aPhone();
	await phone.share(formOf(aFile("a"), aFile("b")));
	expect(await phone.share(formOf(aFile("c")), 2)).toBe("#/take/file2");
	expect([...phone.kept.keys()]).toEqual([`${scope}shared/0`]);
	const written = new FormData();
	written.set("text", "https://host.test/#/card/AQ");
	expect(await phone.share(written, 3)).toBe("#/take/file3");
	expect(await [...phone.kept.values()][0]?.text()).toBe("https://host.test/#/card/AQ");
});

test("a full disk, and a file that is too large, have addresses of their own; among others it is told by its name", async () => {
	const full = aPhone(1);
	expect(await full.share(formOf(aFile("a"), aFile("b")))).toBe("#/take/file1-full");
	expect(full.kept.size).toBe(0);
	const phone = aPhone();
	expect(await phone.share(formOf(huge()))).toBe("#/take/file1-large");
	expect(phone.kept.size).toBe(0);
	expect(await phone.share(formOf(aFile("a"), huge()))).toBe("#/reports/file1");
	const [, tooLarge] = [...phone.kept.values()];
	expect([tooLarge?.headers.get("x-name"), tooLarge?.headers.has("x-too-large")]).toEqual(["huge.txt", true]);
	expect(await tooLarge?.text()).toBe("");
});

test("what can't be read leads to where that is said", async () => {
	const { kept } = aPhone();
	const broken = { formData: async () => Promise.reject(new TypeError("no form")) } as unknown as Request;
	const caches = { open: async () => expect.unreachable(), delete: async () => true };
	expect(await received(broken, { caches, scope, now: 4 })).toBe("#/take/file4");
	expect(kept.size).toBe(0);
});
