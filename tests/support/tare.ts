/** Ten empties that differ by six grams; one tare of 321 g serves all of their kind. */
export const TEN_ALIKE = [318, 319, 320, 320, 321, 321, 322, 322, 323, 324];
/** One of them is a gram heavier than one tare allows. */
export const TEN_UNLIKE = [...TEN_ALIKE.slice(0, 9), 325];
