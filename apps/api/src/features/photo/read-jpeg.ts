import { fieldProblem } from '../../platform/problem.ts';
import { type BareJpeg, bareJpeg } from './jpeg.ts';
import { MOST_PHOTO_BYTES } from './schema.ts';

/** The picture alone, of what a phone sent as base64 text; refused at its field where it is none or too large. */
export function readJpeg(contentBase64: string): BareJpeg {
  const bytes = Buffer.from(contentBase64, 'base64');
  if (bytes.length > MOST_PHOTO_BYTES)
    throw fieldProblem('invalid-input', 'contentBase64', 'A photo is 2 MB at most. Make it smaller first.');
  const jpeg = bareJpeg(bytes);
  if (!jpeg)
    throw fieldProblem(
      'invalid-input',
      'contentBase64',
      'This is no whole JPEG picture. Take the photo again.',
    );
  return jpeg;
}
