/** The least a page with Preact can be that keeps one record: what the app is measured against. */
import { openDB } from "idb";
import { render } from "preact";
import { useState } from "preact/hooks";

const opening = openDB("bare", 1, { upgrade: (db) => void db.createObjectStore("records", { autoIncrement: true }) });

function Page() {
	const [kept, setKept] = useState(0);
	async function keep() {
		const tx = (await opening).transaction("records", "readwrite", { durability: "strict" });
		await Promise.all([tx.store.add({ litres: 20 }), tx.done]);
		setKept(kept + 1);
	}
	return (
		<main>
			<button type="button" onClick={keep}>
				Keep
			</button>
			<p class="kept">{kept}</p>
		</main>
	);
}

render(<Page />, document.body);
