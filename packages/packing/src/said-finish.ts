/**
 * When a line is done, as people say it: to the next five minutes, since nobody ends to the second. Screens and papers say
 * the same. Units: seconds. Errors: none. Source: common practice, no source.
 */
export const saidFinish = (seconds: number): number => Math.ceil(seconds / 300) * 300;
