/** Acting for a neighbour's household. */
export const en = {
  title: 'Whom you may help',
  words:
    'While you act for a household you see what it sees, without duties of your own. It sees that you looked, and each entry says who made it.',
  until: (household: string, until: string) => `${household}, until ${until}`,
  act: (household: string) => `Act for ${household}`,
  band: (household: string, helper: string) => `You act for ${household} (entered by ${helper}).`,
  stop: 'Stop acting',
  ended: 'Your right to act for this household has ended.',
  endedWords: 'What you entered stays, and says whom it was entered for.',
};

export type HelpingWords = typeof en;
