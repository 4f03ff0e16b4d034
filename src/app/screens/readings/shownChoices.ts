/** How scan tools show a figure. */
import type { Option } from "../../components/Choice";
import type { ShownAs } from "../../shownByte";

export const shownChoices: readonly Option<ShownAs>[] = [
	{ value: "percent", label: "Percent" },
	{ value: "byte", label: "Raw byte", more: "hexadecimal or decimal" },
];
