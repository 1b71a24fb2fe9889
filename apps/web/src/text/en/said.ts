/** What a phone writes down of a bag that is spoken into it, and what the page says to it. */
export const en = {
  title: 'With wet hands: say it',
  label: 'Say or type the bag',
  hint: 'Tap the microphone of your phone’s keyboard and say, for example: bag seven, dry, twenty-two point seven, keep.',
  heard: (bag: string) => `Heard: ${bag}.`,
  bagIs: (no: number) => `bag ${no}`,
  otherBag: (said: number, now: number) => `You said bag ${said}, but bag ${now} is on the scale.`,
  notHeard: (word: string) => `“${word}” is none of the words that are known here. Say it again, or type it.`,
  bagWords: 'bag sack number',
  keepWords: 'keep kept done',
  pointWords: 'point dot',
  andWords: 'and a is it the',
  conditionWords: {
    dry: 'dry',
    torn: 'torn ripped',
    wet: 'wet damp',
    infested: 'insects bugs',
    odour: 'smells smell',
    wrong: 'wrong',
  },
  unitWords: {
    kg: 'kg kilo kilos kilogram kilograms',
    lb: 'lb lbs pound pounds',
  },
  /** Hundreds multiply what was said before them; everything else is added. */
  hundreds: 'hundred',
  numbers:
    '0=zero,oh 1=one 2=two 3=three 4=four 5=five 6=six 7=seven 8=eight 9=nine 10=ten 11=eleven 12=twelve 13=thirteen 14=fourteen 15=fifteen 16=sixteen 17=seventeen 18=eighteen 19=nineteen 20=twenty 30=thirty 40=forty 50=fifty 60=sixty 70=seventy 80=eighty 90=ninety',
};
