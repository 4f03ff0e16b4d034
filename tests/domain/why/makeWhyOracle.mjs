// node tests/domain/why/makeWhyOracle.mjs: brings whyOracle.json up to date. A minute or two a history.
import { keepAnswers } from "../../helpers/keepAnswers.mjs";

await keepAnswers(import.meta.dirname, "plainHistories.ts", "whyOracle.json", ({ answers }, before, say) =>
	answers(before, say),
);
