export type JpegWish = {
  readonly widthPixels?: number;
  readonly heightPixels?: number;
  /** Further segments before the picture: the kind of mark, and what it says. */
  readonly segments?: readonly (readonly [kind: number, text: string])[];
  /** Bytes of the picture itself; twins are different photos when these differ. */
  readonly picture?: readonly number[];
  /** What a camera hangs on behind the end. */
  readonly tail?: string;
};

const two = (value: number) => [value >> 8, value & 0xff];

/** The order of segments of a JPEG file (ITU-T T.81, annex B); its tables are empty, so it is for reading, not for looking. */
export function aJpeg(wish: JpegWish = {}): Buffer {
  const {
    widthPixels = 640,
    heightPixels = 480,
    segments = [],
    picture = [1, 2, 0xff, 0, 3],
    tail = '',
  } = wish;
  const segment = (kind: number, body: readonly number[]) => [0xff, kind, ...two(body.length + 2), ...body];
  const said = segments.flatMap(([kind, text]) => segment(kind, [...Buffer.from(text, 'latin1')]));
  return Buffer.from([
    ...[0xff, 0xd8],
    ...segment(0xe0, [...Buffer.from('JFIF\0'), 1, 2, 0, 0, 1, 0, 1, 0, 0]),
    ...said,
    ...segment(0xc0, [8, ...two(heightPixels), ...two(widthPixels), 1, 1, 0x11, 0]),
    ...segment(0xda, [1, 1, 0, 0, 63, 0]),
    ...picture,
    ...[0xff, 0xd9],
    ...Buffer.from(tail, 'latin1'),
  ]);
}
