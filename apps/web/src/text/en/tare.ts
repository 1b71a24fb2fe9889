/** Ten empty containers on the scale, and what is typed with the container on it. */
export const en = {
  title: 'Weigh ten empties',
  notWeighed: (kind: string) => `${kind}: nobody has weighed ten empty ones yet.`,
  weighs: (kind: string, grams: number) => `${kind}: an empty one weighs ${grams} g.`,
  unlike: (kind: string, grams: number) =>
    `${kind}: empty ones differ by ${grams} g, so each is weighed by itself.`,
  last: (when: string, who: string, least: string, most: string) =>
    `Weighed ${when} by ${who}, from ${least} to ${most} g.`,
  says: 'Weigh ten when a new batch of containers or lids is opened: each as it stands on the scale when it is full, with its lid or liner, or without.',
  kind: 'Container',
  ten: 'The ten that were weighed',
  takeOut: (no: number, grams: string) => `Take out number ${no}: ${grams} g`,
  soFar: (count: number, spread: number, most: number) =>
    count === 0
      ? 'The first of ten.'
      : `${count} of ten. ${spread} g between the lightest and the heaviest; ${most} g are allowed.`,
  onTheScale: (no: number) => `Empty container ${no}, in grams`,
  readingProblem: 'Write whole grams, from 1 to 100,000.',
  pad: 'Keys of figures',
  rubOut: 'Rub out the last figure',
  next: 'Next',
  same: (grams: string) => `The same again: ${grams} g`,
  alike: (grams: string, spread: number) =>
    `${grams} g each, ${spread} g between the lightest and the heaviest.`,
  tooUnlike: (spread: number, most: number) =>
    `${spread} g between the lightest and the heaviest; more than ${most} g is too much for one tare. Tap a figure that is a slip, or weigh each container by itself.`,
  keep: (grams: string) => `Keep ${grams} g as the tare`,
  isGross: (kind: string) => `Each ${kind} stands on the scale with its food`,
  takenOff: (grams: string) => `${grams} g are taken off for the container.`,
  noTare: 'Nobody has weighed ten empty ones of this kind, so type what each weighs empty.',
  eachByItself: (spread: number) => `The ten empties were ${spread} g apart, so type what each weighs empty.`,
  ownTare: 'This container empty, in grams',
  typeOwn: 'Weigh this one empty first',
  figureGross: 'On the scale, with the container',
  scaleShows: (grams: string) => `the scale shows ${grams} g`,
  net: (gross: string, tare: string, net: string) => `${gross} g less ${tare} g is ${net} g net.`,
  inAll: (count: number, grams: string) => `${count} of them: ${grams} g.`,
  tareAbove: (tare: string, gross: string) =>
    `The empty container weighs ${tare} g, the full one ${gross} g. Read the scale again.`,
  keepUnlike: 'Keep it: weigh each by itself',
};
export type TareWords = typeof en;
