import { vi } from "vitest";

// What screens and keeper do does not hang on how finely the core reckons; its own tests are on the full sample.
vi.mock("../../src/domain/estimator/sampleSize", () => ({
	largeSample: 2 ** 14,
	smallSample: 2 ** 13,
	doubtSample: 2 ** 10,
}));
