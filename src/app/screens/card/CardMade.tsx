import { type Card, packedCard } from "../../../share/card";
import { linkTo } from "../../../share/link";
import { appAddress } from "../../appAddress";
import { CardFacts } from "../../components/CardFacts";
import { LinkButtons } from "../../components/LinkButtons";
import { QrCode } from "../../components/QrCode";
import { usePrintedSheet } from "../../usePrintedSheet";
import { cardWords } from "../../words/card";
import "./CardMade.css";

interface CardMadeProps {
	readonly card: Card;
	readonly onChange: () => void;
}

/** A card on its way out: as a code on the screen and on paper, a link, or a file. */
export function CardMade({ card, onChange }: CardMadeProps) {
	usePrintedSheet();
	const words = cardWords();
	const body = packedCard(card);
	if (!body) return null;
	const link = linkTo(appAddress(), "card", body);
	return (
		<>
			<section class="card">
				<h2>{words.made(card.name)}</h2>
				<p>{words.madeAbout}</p>
				<QrCode text={link} label={words.made(card.name)} stands="medium" />
				<LinkButtons link={link} links={[]} head={words.fileHead(card.name)} name={words.fileName} />
				<button type="button" class="button wide" onClick={() => window.print()}>
					{words.print}
				</button>
				<p class="small soft number">{words.size(link.length)}</p>
			</section>
			<section class="card">
				<CardFacts card={card} />
				<button type="button" class="button wide" onClick={onChange}>
					{words.change}
				</button>
			</section>
			<section class="printsheet cardsheet" aria-hidden="true">
				<p>{words.printedFor}</p>
				<h2>{card.name}</h2>
				<CardFacts card={card} />
				<QrCode text={link} label={words.made(card.name)} stands="medium" />
				<p>{words.scanMe}</p>
				<p class="small linktext">{link}</p>
			</section>
		</>
	);
}
