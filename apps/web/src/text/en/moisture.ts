/** Two moisture readings that explain what a second weighing finds. */
export const en = {
  asked: 'It may have dried, or grown damper',
  says: 'With a moisture meter’s two readings, what they explain of the difference is booked as moisture. The rest stays as it is.',
  was: 'Moisture then (%)',
  is: 'Moisture now (%)',
  problem: 'Write a percentage from 0 to 50, such as 12.5.',
  both: 'Two readings are needed: then, and now.',
  explained: (grams: string, isDried: boolean, rest: string) =>
    `${grams} g have ${isDried ? 'dried away' : 'been taken up from the air'}; ${rest} g stay unexplained.`,
  nothing: 'The two readings explain nothing of the difference.',
  dried: 'Dried away',
  damper: 'Grown damper',
};
export type MoistureWords = typeof en;
