import { cleanup } from "@testing-library/preact";
import { afterAll, afterEach } from "vitest";

// Testing Library does this by itself only where test functions are globals.
afterEach(cleanup);

// Preact runs effects within 100 ms of a drawing: the page must not be taken away before.
afterAll(() => new Promise((passed) => setTimeout(passed, 200)));
