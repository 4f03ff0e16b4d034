/**
 * How large a log may be. A log of ten years of driving has some thousands of entries and is a megabyte long; what is far
 * beyond was made by somebody to hurt, or by accident. Within these limits a file is read or refused within a second, in
 * less than 100 MB (tests/store/hostile.test.ts).
 */

/** Bytes of a file, and so at most as many characters: `mostEvents` with every field filled in are 9 MB. */
export const longestFile = 12_000_000;

/** For a person: what a file over `longestFile` is over. */
export const longestFileWords = `${longestFile / 1e6} MB`;

/** More than five entries a day for ten years; replaying as many takes minutes. */
export const mostEvents = 20_000;

/** A car is flashed with a handful. */
export const mostCalibrations = 100;

/** Texts, numbers, lists and the like in a file: an entry has about twenty. Each costs memory, however short it is. */
export const mostValues = 500_000;

/** Fields in one pair of braces: an entry has a dozen, and telling copies among many takes long. */
export const mostFields = 1_000;

/** Levels of brackets within brackets: a log has six, the rest is for fields of later versions. */
export const deepest = 32;

/** Characters of a name, an id, a place or a product, as a person types them. */
export const longestName = 200;

/** Characters of any text or field name in a file, for fields of later versions. */
export const longestText = 10_000;

/** The last day that a log may name: see `isRealDay` in wire.ts. */
export const lastDay = "2200-12-31";
