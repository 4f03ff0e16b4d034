/** How many cases a simulation tries: few where every change is checked, all in `npm run test:long`. */
export const cases = (few: number, all: number): number => (process.env.HEELTAP_ALL_CASES ? all : few);
