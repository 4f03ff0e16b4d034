import { measureWaits } from "./bench/browser";
export async function main() { console.log(JSON.stringify(await measureWaits(100))); return 0; }
