import { CardMaker } from "./card/CardMaker";
import { CardReceived } from "./card/CardReceived";

/** A card that came with a link; without one, the form that makes them. */
export function CardScreen({ id }: { readonly id: string | null }) {
	return id === null ? <CardMaker /> : <CardReceived payload={id} />;
}
