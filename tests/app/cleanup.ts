import { cleanup } from "@testing-library/preact";
import { afterEach } from "vitest";

// Testing Library does this by itself only where test functions are globals.
afterEach(cleanup);
