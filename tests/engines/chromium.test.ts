import { chromium } from "./chromium";
import { journeyIn } from "./journey";

journeyIn(chromium);
