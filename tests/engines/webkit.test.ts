import { journeyIn } from "./journey";
import { webkit } from "./webkit";

journeyIn(webkit);
