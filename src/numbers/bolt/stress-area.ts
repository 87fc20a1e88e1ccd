import type { Thread } from './thread.ts';

/**
 * Diameters of the basic 60° profile: pitch diameter and root diameter of the bolt.
 *   d2 = d - 0.649519 P;  d3 = d - 1.226869 P
 * d major diameter [m]; P pitch [m]. Source: iso-898-1 (ISO 724 geometry, memory).
 */
export const pitchDiameter = ({ diameter, pitch }: Size): number => diameter - 0.649519 * pitch;
export const rootDiameter = ({ diameter, pitch }: Size): number => diameter - 1.226869 * pitch;

type Size = Pick<Thread, 'diameter' | 'pitch'>;

/**
 * The area that carries tension in a metric thread.
 *   As = π/4 ((d2 + d3)/2)² = π/4 (d - 0.938194 P)²
 * As stress area [m²]. Valid for the basic ISO profile. Source: iso-898-1.
 */
export const metricStressArea = ({ diameter, pitch }: Size): number =>
  (Math.PI / 4) * (diameter - 0.938194 * pitch) ** 2;

/**
 * The same of a unified thread.
 *   At = π/4 (D - 0.9743 P)²
 * D major diameter [m]; P pitch, one inch over the threads an inch [m]. For steel below 100 ksi (690 MPa); a smaller area
 * is used above. Source: asme-b1-1.
 */
export const unifiedStressArea = ({ diameter, pitch }: Size): number =>
  (Math.PI / 4) * (diameter - 0.9743 * pitch) ** 2;

/** Each thread by the formula of its own series: mixing them overstates an inch bolt by about 1 %. */
export const stressArea = (thread: Thread): number =>
  thread.series === 'metric' ? metricStressArea(thread) : unifiedStressArea(thread);
