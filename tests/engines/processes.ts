import { spawnSync } from "node:child_process";

/** A process and all that descend from it. */
export function treeOf(root: number): number[] {
	const { stdout } = spawnSync("ps", ["-axo", "pid=,ppid="], { encoding: "utf8" });
	const pairs = stdout
		.trim()
		.split("\n")
		.map((line) => line.trim().split(/\s+/).map(Number));
	const tree = [root];
	for (const parent of tree) tree.push(...pairs.filter(([, ppid]) => ppid === parent).map(([pid]) => pid));
	return tree;
}

export function killTree(root: number): void {
	signalAll(treeOf(root), "SIGKILL");
	leftToEnd.delete(root);
}

/** Halts them where they are: nothing of theirs runs until they are killed. */
export function haltTree(root: number): void {
	signalAll(treeOf(root), "SIGSTOP");
}

const leftToEnd = new Set<number>();
let watching = false;

/** Makes sure that a browser does not outlive a test that fails to end it. */
export function endWithUs(root: number): void {
	if (!watching) process.once("exit", () => [...leftToEnd].forEach(killTree));
	watching = true;
	leftToEnd.add(root);
}

function signalAll(processes: readonly number[], signal: NodeJS.Signals): void {
	for (const pid of processes) {
		try {
			process.kill(pid, signal);
		} catch {
			// It has ended by itself.
		}
	}
}
