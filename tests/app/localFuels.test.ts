import { expect, test } from "vitest";
import { localFuels } from "../../src/app/localFuels";
import { catalogue } from "../../src/domain/catalogue";

test.each([
	["en-US", "flex-51-83", "gasoline-e10"],
	["de-DE", "flex-e85-eu", "gasoline-to-10"],
	["sv", "flex-e85-eu", "gasoline-to-10"],
	["en-AU", "flex-e85-au", "gasoline-to-10"],
	["pt-BR", "ethanol-e98", "gasoline-c"],
	["ja-JP", "flex-51-83", "gasoline-e10"],
])("localFuels(%s) offers %s and %s first", (language, strong, gasoline) => {
	const fuels = localFuels(language);
	expect(fuels).toMatchObject({ strong, gasolines: expect.arrayContaining([gasoline]) });
	const ids = catalogue.map(({ id }) => id);
	for (const id of [fuels.strong, ...fuels.gasolines]) expect(ids).toContain(id);
});

test("a browser without a language is taken to be where most of these cars are", () => {
	expect(localFuels("C")).toEqual(localFuels("en-US"));
});
