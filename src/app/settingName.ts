/** What a setting of the car is called; one of a later version of the app goes by the name of its field. */
import { openerWords } from "./words/opener";

export function settingName(field: string): string {
	const { settings, otherSetting } = openerWords();
	return Object.hasOwn(settings, field) ? settings[field as keyof typeof settings] : otherSetting(field);
}
