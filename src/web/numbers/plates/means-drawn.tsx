/** How each means of holding a joint is drawn on the bolt or pin it holds: a small side view about its middle. */
import type { VNode } from 'preact';

/** Half the thickness of the bolt that everything here is drawn about. */
export const SHANK = 7;

const SHAPES: Readonly<Record<string, () => VNode>> = {
  torque: () => <Nut />,
  'locking nut': () => (
    <g>
      <Nut />
      <rect class="shape tyre" x={10} y={-13} width={9} height={26} rx={2} />
    </g>
  ),
  'second nut': () => (
    <g>
      <rect class="shape" x={-16} y={-20} width={15} height={40} />
      <rect class="shape" x={1} y={-20} width={15} height={40} />
    </g>
  ),
  'split pin': () => (
    <g>
      <circle class="shape" cy={-21} r={6} />
      <path d="M-1.5 -15V15C-1.5 24 -10 23 -13 19M1.5 -15V15C1.5 24 10 23 13 19" />
    </g>
  ),
  'safety wire': () => (
    <g>
      <circle class="shape" r={3.5} />
      <path d="M-2 3C-18 6 -6 15 -20 17S-24 29 -38 30M-2 3C-8 16 -17 8 -20 17S-36 21 -38 30" />
    </g>
  ),
  'spring clip': () => <path d="M0 -22V22M0 -22C11 -30 17 -17 9 -12S3 2 10 8S9 17 3 20" />,
  strap: () => (
    <g>
      <rect x={-13} y={-17} width={26} height={34} rx={11} class="ring-line" />
      <rect class="shape tyre" x={-5} y={-25} width={10} height={12} />
      <path d="M5 -19H19" />
    </g>
  ),
  'witness mark': () => <path class="curve dashed" d="M-14 -16L14 16" />,
  'thread-locking compound': () => (
    <path d={[-15, -9, -3, 3, 9, 15].map(x => `M${x - 3} ${-SHANK}L${x + 3} ${SHANK}`).join('')} />
  ),
  'lock tab': () => <path class="curve" d="M-16 24V15H6V-19H13" />,
  key: () => <rect class="shape tyre" x={-15} y={-SHANK - 5} width={30} height={9} />,
  collar: () => (
    <g>
      <rect class="shape" x={-9} y={-18} width={18} height={36} />
      <rect class="shape" x={-3} y={-25} width={6} height={8} />
    </g>
  ),
  spring: () => <path class="curve" d="M-18 0l4 -12 7 24 7 -24 7 24 7 -24 4 12" />,
  clamp: () => (
    <g>
      <rect class="shape" x={-15} y={-20} width={30} height={19} />
      <rect class="shape" x={-15} y={1} width={30} height={19} />
      <path d="M0 -27V27M-4 -27H4M-4 27H4" />
    </g>
  ),
};

const Nut = () => (
  <g>
    <rect class="shape" x={-13} y={-20} width={23} height={40} />
    <path d="M-13 -8H10M-13 8H10" />
  </g>
);

/** An empty frame where the means is not known. */
export const MeansDrawn = (props: { readonly name: string; readonly x: number; readonly y: number }) => (
  <g transform={`translate(${props.x} ${props.y})`}>
    {SHAPES[props.name]?.() ?? <rect class="open-frame" x={-18} y={-20} width={36} height={40} />}
  </g>
);

export const DRAWN: readonly string[] = Object.keys(SHAPES);
