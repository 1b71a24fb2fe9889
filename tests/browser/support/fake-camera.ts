import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Mark } from '../../support/pdf.ts';

const [WIDTH, HEIGHT] = [640, 480];

/** A camera that shows what a file says, which a browser opens each time a page asks for it. Before there is a file it does not start. */
export function aFakeCamera() {
  const folder = mkdtempSync(join(tmpdir(), 'sheafbook-camera-'));
  const file = join(folder, 'seen.y4m');
  return {
    browserArgs: [
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream', // nobody sits there to allow it
      `--use-file-for-fake-video-capture=${file}`,
    ] as const,
    /** What is held in front of it from now on: a mark as it was printed, turned a little, on a grey table. */
    show(mark: Mark): void {
      writeFileSync(file, videoOf(mark));
    },
    close: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** One picture as raw video (YUV4MPEG2), which plays on and on. */
function videoOf(mark: Mark): Uint8Array {
  const head = `YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420\n`;
  const grey = new Uint8Array((WIDTH * HEIGHT) / 2).fill(128);
  const picture = Buffer.concat([Buffer.from('FRAME\n'), lightOf(mark), grey]);
  return Buffer.concat([Buffer.from(head), picture, picture]);
}

const TURNED = 0.2; // radians
const ACROSS = 260; // pixels that the mark takes

function lightOf(mark: Mark): Uint8Array {
  const light = new Uint8Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y += 1)
    for (let x = 0; x < WIDTH; x += 1) light[y * WIDTH + x] = lightAt(mark, x, y);
  return light;
}

function lightAt(mark: Mark, x: number, y: number): number {
  const [right, down] = [x - WIDTH / 2, y - HEIGHT / 2];
  const scale = mark.width / ACROSS;
  const column = Math.round((right * Math.cos(TURNED) + down * Math.sin(TURNED)) * scale + mark.width / 2);
  const row = Math.round((down * Math.cos(TURNED) - right * Math.sin(TURNED)) * scale + mark.height / 2);
  if (column < 0 || row < 0 || column >= mark.width || row >= mark.height) return 150;
  // Paper is not quite white, ink not quite black, and light falls from one side.
  return mark.data[(row * mark.width + column) * 4] === 0 ? 40 + x / 20 : 190 + x / 20;
}
