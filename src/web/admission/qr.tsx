import qrcode from 'qrcode-generator';
import { admissionWords } from '../words/admission.tsx';

/** Squares of quiet zone around it. Source: ISO/IEC 18004:2015, 5.3.8. */
const QUIET = 4;

/** Black on white in either theme, for a camera. What it says stands beside it as text. */
export function Qr({ text }: { readonly text: string }) {
  const qr = qrcode(0, 'M');
  qr.addData(text);
  qr.make();
  const size = qr.getModuleCount();
  const squares = Array.from({ length: size * size }, (_, n) => [Math.floor(n / size), n % size] as const);
  const path = squares
    .filter(([row, column]) => qr.isDark(row, column))
    .map(([row, column]) => `M${column} ${row}h1v1h-1z`);
  const side = size + 2 * QUIET;
  return (
    <svg
      class="qr"
      viewBox={`${-QUIET} ${-QUIET} ${side} ${side}`}
      role="img"
      aria-label={admissionWords.addressAndCode}
    >
      <rect x={-QUIET} y={-QUIET} width={side} height={side} fill="#fff" />
      <path d={path.join('')} fill="#000" shape-rendering="crispEdges" />
    </svg>
  );
}
