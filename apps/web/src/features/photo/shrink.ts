/** The longer side of what is sent: enough to read a lot mark by, and a few hundred kilobytes. */
const LONGEST_PIXELS = 1600;
/** The server takes 2 MB; a margin is left. */
const MOST_BYTES = 1_900_000;
const QUALITIES = [0.82, 0.7, 0.55, 0.4];

/**
 * Draws a photo anew, smaller and upright. What the camera wrote beside the picture, such as where it was taken, does not
 * come along, since only the picture is drawn.
 * Errors: throws when the file is no picture that this browser can read.
 */
export async function shrinkPhoto(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, LONGEST_PIXELS / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  for (const quality of QUALITIES) {
    const jpeg = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality));
    if (jpeg && jpeg.size <= MOST_BYTES) return jpeg;
  }
  throw new Error('a picture of this size always fits');
}

/** The bytes as base64 text, as the server takes them. */
export function toBase64(blob: Blob): Promise<string> {
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result).split(',')[1] ?? '');
    reader.onerror = () => fail(reader.error);
    reader.readAsDataURL(blob);
  });
}
