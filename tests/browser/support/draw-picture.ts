import type { Page } from 'playwright-core';

/** A picture as a camera gives it: large, and noisy enough not to press small. */
export async function drawPicture(page: Page, seed: number): Promise<Buffer> {
  const base64 = await page.evaluate<string>(`(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [3000, 2000];
    const pen = canvas.getContext('2d');
    for (let at = 0; at < 4000; at += 1) {
      pen.fillStyle = 'hsl(' + ((at * 37 + ${seed}) % 360) + ' 60% 50%)';
      pen.fillRect((at * 7919) % 3000, (at * 104729) % 2000, 60, 60);
    }
    return canvas.toDataURL('image/jpeg', 0.95).split(',')[1];
  })()`);
  return Buffer.from(base64, 'base64');
}
