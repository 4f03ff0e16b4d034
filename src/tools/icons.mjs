// Draws public/icon*.svg and their PNGs: seven equally likely contents of the tank, piled over the window of the tune.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { chromiumFlags, findChromium } from "./browser.mjs";

const folder = join(import.meta.dirname, "../../public");
const [petrol, amber, pale] = ["#0b2730", "#ffb43b", "#e6eff0"];

// Heights of the columns; the last one stands outside of the bracket.
const columns = [1, 3, 2, 1];
const [pitch, radius, floor] = [88, 37, 330];
const dots = columns.flatMap((height, column) =>
	Array.from({ length: height }, (_, row) => {
		const x = 256 + (column - 1.5) * pitch;
		const fill = column === columns.length - 1 ? pale : amber;
		return `\t\t<circle cx="${x}" cy="${floor - row * pitch}" r="${radius}" fill="${fill}" />`;
	}),
);

/** @param {string} ground @param {number} scale about the middle: masks may cut away all but the central 80 % */
const drawing = (ground, scale) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">
	${ground}
	<g transform="translate(256 256) scale(${scale}) translate(-256 -269)">
${dots.join("\n")}
		<path d="M88 392v36h248v-36" fill="none" stroke="${pale}" stroke-width="24" stroke-linecap="round" stroke-linejoin="round" />
	</g>
</svg>
`;
const any = drawing(`<rect width="512" height="512" rx="112" fill="${petrol}" />`, 1.06);
const full = drawing(`<rect width="512" height="512" fill="${petrol}" />`, 0.82);
const square = drawing(`<rect width="512" height="512" fill="${petrol}" />`, 1);

writeFileSync(join(folder, "icon.svg"), any);
writeFileSync(join(folder, "icon-maskable.svg"), full);

/** @type {[string, string, number][]} */
const pictures = [
	["icon-192.png", any, 192],
	["icon-512.png", any, 512],
	["icon-maskable-192.png", full, 192],
	["icon-maskable-512.png", full, 512],
	// iOS rounds the corners itself and shows transparency as black.
	["apple-touch-icon.png", square, 180],
	["favicon.png", any, 48],
];
const profile = mkdtempSync(join(tmpdir(), "heeltap-icons-"));
const context = await chromium.launchPersistentContext(profile, {
	executablePath: findChromium() ?? "",
	args: chromiumFlags,
});
const page = await context.newPage();
for (const [name, svg, size] of pictures) {
	await page.setViewportSize({ width: size, height: size });
	await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${svg}`);
	await page.screenshot({ path: join(folder, name), omitBackground: true });
}
await context.close();
rmSync(profile, { recursive: true, force: true });
