import { useId } from "preact/hooks";
import { refusalWords, type Trouble } from "../../dataLogWords";
import { dataLogWords } from "../../words/dataLog";
import "../../components/FileOpener.css";

interface ChooseLogProps {
	readonly label: string;
	readonly refusal?: Trouble | null;
	readonly onChoose: (file: File) => void;
}

/** Takes any file: what loggers call theirs differs, and what is none is told. */
export function ChooseLog({ label, refusal = null, onChoose }: ChooseLogProps) {
	const id = useId();
	return (
		<div class="stack opener">
			{refusal && (
				<p class="fault" id={`${id}-fault`} role="alert">
					{dataLogWords().refused(refusalWords(refusal))}
				</p>
			)}
			<input
				id={id}
				type="file"
				aria-invalid={refusal ? true : undefined}
				aria-describedby={refusal ? `${id}-fault` : undefined}
				onChange={({ currentTarget }) => {
					const file = currentTarget.files?.[0];
					if (file) onChoose(file);
					// The same file may be chosen again once it is mended.
					currentTarget.value = "";
				}}
			/>
			<label class="button main" for={id}>
				{label}
			</label>
		</div>
	);
}
