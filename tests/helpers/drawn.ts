/** Property tests draw the same cases in every run; with another HEELTAP_SEED, others. */
import fc from "fast-check";

fc.configureGlobal({ seed: Number(process.env.HEELTAP_SEED ?? 1) });
