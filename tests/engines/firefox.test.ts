import { firefox } from "./firefox";
import { journeyIn } from "./journey";

journeyIn(firefox);
