/** `npm run campaign`: much more of what is drawn at random, for as long as it takes. */
export const CAMPAIGN = Number(process.env.GROOVEWRIGHT_CAMPAIGN ?? 0) > 0

/** A random job costs a tenth of a second. So many are drawn each time the tests run, and twenty times as many in a campaign. */
export const runs = (daily: number): number => (CAMPAIGN ? 20 * daily : daily)
