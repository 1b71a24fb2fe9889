/** Something that whoever runs the book can mend. The app prints its message, without a stack, and ends. */
export class StartRefusal extends Error {
  override readonly name = 'StartRefusal';
}

/** Refuses to go on unless the condition holds. For a programmer's mistake, `assert` is the right word instead. */
export function refuseUnless(condition: unknown, message: string): asserts condition {
  if (!condition) throw new StartRefusal(message);
}
