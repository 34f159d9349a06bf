const all = process.env.POPULATION === 'all';

/** How many cases chance makes: with `npm run population` as many as are worth an hour, every day a share of them. */
export const runs = (daily: number, whole: number): number => (all ? whole : daily);
