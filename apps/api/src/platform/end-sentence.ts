/** What a person wrote, as a sentence among others. */
export const endSentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
