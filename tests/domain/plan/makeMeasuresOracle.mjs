// node tests/domain/plan/makeMeasuresOracle.mjs: brings measuresOracle.json up to date. A minute or two a scene.
import { keepAnswers } from "../../helpers/keepAnswers.mjs";

await keepAnswers(import.meta.dirname, "measuresOracle.ts", "measuresOracle.json", ({ answers }, before, say) =>
	answers(before, say),
);
