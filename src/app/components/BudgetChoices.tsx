import { usualBudget } from "../../domain/warnings";
import { budgets, budgetWords } from "../calibrationForm";
import { calibrationWords } from "../words/calibration";
import { Choice, type Option } from "./Choice";

/** Accepted chances as the forms hold them. */
interface Budgets {
	readonly lean: string;
	readonly knock: string;
}

interface BudgetChoicesProps extends Budgets {
	readonly onChange: (changed: Partial<Budgets>) => void;
}

/** How sure the tuner wants to be on either side of the window. */
export function BudgetChoices({ lean, knock, onChange }: BudgetChoicesProps) {
	const words = calibrationWords();
	return (
		<section class="card">
			<h2>{words.howSure}</h2>
			<p class="small soft">{words.howSureMore}</p>
			<Choice label={words.lean} options={options(lean)} value={lean} onChange={(lean) => onChange({ lean })} />
			<Choice label={words.knock} options={options(knock)} value={knock} onChange={(knock) => onChange({ knock })} />
		</section>
	);
}

/** The usual ones, and the chosen one where it is none of them. */
function options(chosen: string): Option<string>[] {
	const values = budgets.map(String);
	return (values.includes(chosen) ? values : [chosen, ...values]).map((value) => ({
		value,
		label: budgetWords(Number(value)),
		...(Number(value) === usualBudget ? { more: calibrationWords().usual } : {}),
	}));
}
