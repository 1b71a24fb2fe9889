import decode from 'qr/decode.js';

/** What reads the mark in the picture that a camera shows: its text, or null while there is none to be read. */
export function openMarkReader(): (video: HTMLVideoElement) => string | null {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  return (video) => {
    if (!pen || video.videoWidth === 0) return null;
    canvas.width = video.videoWidth;
    canvas.height = video.videoHeight;
    pen.drawImage(video, 0, 0);
    try {
      return decode(pen.getImageData(0, 0, canvas.width, canvas.height));
    } catch {
      return null; // no mark in this picture, or not sharp yet
    }
  };
}
