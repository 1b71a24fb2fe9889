/** A key that no other command has. A hall without a certificate has no `randomUUID`, but it has random bytes. */
export const newKey = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join(
    '',
  );
