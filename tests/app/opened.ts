/** The stores that a test has opened: closed after it by cleanup.ts, which runs for every file, as shared modules do not. */
export const opened = new Set<{ close(): void }>();
