import { MOST_STREAMED_BYTES } from './guards.ts';
import { Problem } from './problem.ts';

/**
 * The text of a body piece by piece as it comes, read as UTF-8; what is none becomes the sign for it. A body that is longer
 * than any honest one ends in a refusal at the byte that is too many, and is never in memory as a whole.
 */
export async function* textOf(
  body: ReadableStream<Uint8Array> | null,
  { onBytes }: { readonly onBytes: (bytes: Uint8Array) => void },
): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let bytesSoFar = 0;
  if (body !== null)
    for await (const bytes of body) {
      bytesSoFar += bytes.byteLength;
      if (bytesSoFar > MOST_STREAMED_BYTES)
        throw new Problem('body-too-large', { mostBytes: MOST_STREAMED_BYTES });
      onBytes(bytes);
      yield decoder.decode(bytes, { stream: true });
    }
  yield decoder.decode();
}
