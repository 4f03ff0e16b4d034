/** Where a browser keeps its profile, and what becomes of it when the browser ends. */
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { newFolder } from "../e2e/harness";
import type { Engine } from "../engines/engine";
import { haltTree } from "../engines/processes";

export interface Disk {
	/** The profile's folder. */
	readonly profile: string;
	/** Ends the browser. Afterwards the profile is what the disk has kept. */
	cut(engine: Engine): Promise<void>;
	remove(): void;
}

/** The browser dies and the system lives on: all that was handed to it is kept. */
export function killingDisk(): Disk {
	const { path, remove } = newFolder();
	return { profile: path, cut: (engine) => engine.kill(), remove };
}

/** Mounting an image needs these. */
export function canMount(): boolean {
	return process.platform === "linux" && process.getuid?.() === 0 && existsSync("/dev/loop-control");
}

const megabytes = 384;

/**
 * The power fails: a file system in an image (ext4, as on many phones), of which is kept what had reached the image. The
 * browser is halted, and the
 * image is copied until nothing was written meanwhile: a write that was under way may still end, and no power cut would
 * keep the later one of two writes and lose the first.
 */
export function powerDisk(): Disk {
	const { path, remove } = newFolder();
	const [image, after, mounted] = ["disk.img", "after.img", "mounted"].map((name) => join(path, name));
	const mount = () => execFileSync("mount", ["-o", "loop,noatime", image, mounted]);
	mkdirSync(mounted);
	execFileSync("truncate", ["-s", `${megabytes}M`, image]);
	execFileSync("mkfs.ext4", ["-q", "-E", "lazy_itable_init=0,lazy_journal_init=0", image]);
	mount();
	const profile = join(mounted, "profile");
	mkdirSync(profile);
	return {
		profile,
		async cut(engine) {
			haltTree(engine.processId);
			const device = execFileSync("findmnt", ["-no", "SOURCE", mounted], { encoding: "utf8" }).trim();
			let before: string;
			do {
				before = writesTo(device);
				execFileSync("cp", ["--sparse=always", image, after]);
			} while (writesTo(device) !== before);
			await engine.kill();
			await unmounted(mounted);
			execFileSync("mv", [after, image]);
			mount();
		},
		remove() {
			spawnSync("umount", ["-l", mounted]);
			remove();
		},
	};
}

/** Writes to a block device so far, begun and ended. */
function writesTo(device: string): string {
	const counts = readFileSync(join("/sys/block", basename(device), "stat"), "utf8")
		.trim()
		.split(/\s+/);
	const [ended, underWay] = [counts[4], counts[8]];
	return underWay === "0" ? ended : `${ended} and ${underWay}, ${performance.now()}`;
}

/** The dead may hold the file system for a moment. */
async function unmounted(folder: string): Promise<void> {
	const deadline = Date.now() + 20_000;
	for (;;) {
		const { status, stderr } = spawnSync("umount", [folder], { encoding: "utf8" });
		if (status === 0) return;
		if (Date.now() > deadline) throw new Error(`cannot unmount: ${stderr}`);
		await new Promise((done) => setTimeout(done, 50));
	}
}
