import { measureDataLog } from "./dataLog";
export async function main([mb = "100", rate = "4"]: string[]): Promise<number> {
	console.log(await measureDataLog(Number(mb), Number(rate)));
	return 0;
}
