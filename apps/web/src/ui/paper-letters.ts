// The scripts of the papers' fonts. What belongs to every script, as figures and accents do, is theirs too; little pictures
// belong to every script and to no font.
const NOT_ON_PAPER =
  /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}\p{Script=Inherited}]|\p{Emoji_Presentation}/gu;
const MOST_TOLD = 5;

/** The first few signs of a name that a printed paper can't show, each once; empty when it shows all of them. */
export const lettersNotOnPaper = (name: string): string =>
  [...new Set(name.normalize('NFC').match(NOT_ON_PAPER))].slice(0, MOST_TOLD).join(' ');
