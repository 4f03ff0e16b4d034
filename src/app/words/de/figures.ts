import { strong } from "../../emphasis";
import type { Words } from "../en/figures";

export const words: Words = {
	placeMissing: "Nennen Sie den Ort, an dem sie genommen wurde.",
	takenWhere: "Wo wurde sie genommen?",
	whichFuel: "Welcher Kraftstoff ist es?",

	percent: "Prozent",
	byte: "Rohes Byte",
	byteMore: "hexadezimal oder dezimal",
	rawByte: "rohes Byte",
	understood: (how, value) => `Verstanden: ${how}, also ${strong(value)}.`,
	isHexadecimal: (value) => `Es ist hexadezimal: ${value}`,
	ofResponse: (hex, byte) => `das Byte ${hex} dieser Antwort, ${byte} von 255`,
	hexadecimal: (hex, byte) => `hexadezimal ${hex}, ${byte} von 255`,
	decimal: (byte) => `dezimal ${byte} von 255`,
	uneven: (spread) =>
		`Die Bänke unterscheiden sich um ${spread}: Der Kraftstoff ist für beide derselbe, das deutet also auf ein Leck oder einen Sensor (übliche Praxis). Finden Sie das zuerst.`,

	percentEmpty: (example) => `Tippen Sie, was das Gerät zeigt, etwa ${example}.`,
	notAPercentage: (example) =>
		`Ein Prozentwert hat Ziffern und höchstens ein Komma oder einen Punkt, etwa ${example}. Ein rohes Byte? Dann wählen Sie oben „Rohes Byte“.`,
	outside: (least, most) =>
		`Der Wert muss zwischen ${least} und ${most} liegen: Prüfen Sie die Zahl, oder wählen Sie oben „Rohes Byte“, wenn es eines ist.`,
	byteEmpty: (example) => `Tippen Sie das Byte, das das Gerät zeigt, etwa ${example}.`,
	notAByte: (example) =>
		`Ein Byte hat Ziffern und die Buchstaben A bis F, etwa ${example}. Ein Prozentwert? Dann wählen Sie oben „Prozent“.`,
	byteTooLarge: (example) =>
		`Ein Byte geht von 0 bis 255, oder von 00 bis FF: Prüfen Sie die Ziffern, etwa ${example}.`,
	otherPid: (pids) =>
		`Diese Antwort gehört nicht zu PID ${pids.join(" oder ")}: Sie enthielte 41 ${pids[0]} und dann das Byte.`,
};
