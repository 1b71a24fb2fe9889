/**
 * A programmer's mistake: the caller broke what a function's doc comment asks of it. Never a refusal to a member.
 * Units: none. Errors: this is one.
 */
export class AssertionError extends Error {
  override readonly name = 'AssertionError';
}

/**
 * Stops with an AssertionError when a condition does not hold. One condition an assertion.
 * Units: none. Errors: AssertionError carrying `message`.
 */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new AssertionError(message);
}

/**
 * Asserts that a value is a whole number ≥ 0 that a double holds exactly (below 2^53).
 * Units: any (grams, minor units, bags). Errors: AssertionError naming the value.
 */
export function assertWhole(value: number, name: string): void {
  assert(
    Number.isSafeInteger(value) && value >= 0,
    `${name} must be a whole number of 0 or more, got ${value}`,
  );
}
