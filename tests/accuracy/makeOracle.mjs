// node tests/accuracy/makeOracle.mjs: brings oracle.json up to date. About a minute a history, 1 GB of memory.
import { keepAnswers } from "../helpers/keepAnswers.mjs";

await keepAnswers(import.meta.dirname, "oracle.ts", "oracle.json", ({ upToDate }, before, say) =>
	upToDate(before, say),
);
