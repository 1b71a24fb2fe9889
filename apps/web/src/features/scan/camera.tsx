import { useEffect, useRef } from 'react';
import { useScanText } from './words.ts';
import './scan.css';

const BETWEEN_LOOKS_MS = 120;

/** A part of the program of its own, fetched before it is needed: at the line there may be no signal to fetch it. */
export const fetchReader = () => import('./mark-reader.ts');

type CameraProps = { onText: (text: string) => void; onRefused: () => void };

/** The camera at the back of the phone, looked at some eight times a second until its page has had enough. */
export function Camera({ onText, onRefused }: CameraProps) {
  const t = useScanText();
  const screen = useRef<HTMLVideoElement>(null);
  const told = useRef({ onText, onRefused });
  told.current = { onText, onRefused };
  useEffect(() => {
    let isGone = false;
    let stream: MediaStream | undefined;
    const shut = () => {
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
    const look = async (video: HTMLVideoElement) => {
      const { openMarkReader } = await fetchReader();
      const read = openMarkReader();
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
      if (isGone) return shut();
      video.srcObject = stream;
      await video.play();
      while (!isGone) {
        const text = read(video);
        if (text !== null) told.current.onText(text);
        await new Promise((later) => setTimeout(later, BETWEEN_LOOKS_MS));
      }
    };
    if (screen.current)
      look(screen.current).catch(() => {
        if (!isGone) told.current.onRefused();
      });
    return () => {
      isGone = true;
      shut();
    };
  }, []);
  return (
    <figure className="camera">
      <video ref={screen} muted playsInline aria-label={t.camera} />
      <figcaption>{t.hold}</figcaption>
    </figure>
  );
}
