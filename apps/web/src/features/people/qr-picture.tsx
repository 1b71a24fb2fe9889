import encodeQr from 'qr';

const QUIET = 4; // modules of white around it, as ISO/IEC 18004 asks

/** A text that a phone reads off the screen or off a print: black on white in the dark too, or a camera would not see it. */
export function QrPicture({ text, label }: { text: string; label: string }) {
  const modules = encodeQr(text, 'raw', { ecc: 'medium', border: QUIET });
  const black = modules.flatMap((row, y) =>
    row.flatMap((isBlack, x) => (isBlack ? `M${x} ${y}h1v1h-1z` : [])),
  );
  return (
    <svg
      className="qr"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${modules.length} ${modules.length}`}
      shapeRendering="crispEdges"
    >
      <rect width="100%" height="100%" fill="#fff" />
      <path d={black.join('')} fill="#000" />
    </svg>
  );
}
