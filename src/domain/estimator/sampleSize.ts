/** How many particles a belief is kept on: powers of two. Here alone, so that tests of the screens can do with fewer. */

/** Where the content is little known. */
export const largeSample = 2 ** 17;
/** Everywhere else. */
export const smallSample = 2 ** 15;
/** In every account of what may have gone wrong: each evidence is a mean over them. */
export const doubtSample = 2 ** 12;
