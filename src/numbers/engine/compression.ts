/**
 * Compression ratios of a cylinder.
 *
 * Vs = π b² s/4;  full = (Vs + Vc)/Vc;  trapped = (π b² h/4 + Vc)/Vc
 * b bore, s stroke, h exhaust roof below the crown at top [m]; Vc chamber at top [m³].
 * Geometry only: what the pipe pushes back is not in it. Source: crank-geometry (checks/rows/engine.json).
 */
export type Cylinder = { readonly bore: number; readonly stroke: number };

export const boreArea = (bore: number): number => (Math.PI * bore ** 2) / 4;
/** Swept volume [m³]. */
export const sweptVolume = ({ bore, stroke }: Cylinder): number => boreArea(bore) * stroke;
/** Volume over the whole stroke against the chamber [1]. */
export const fullRatio = (cylinder: Cylinder, chamber: number): number => sweptVolume(cylinder) / chamber + 1;
/** Volume left when the exhaust has closed, against the chamber [1]; `roof` below the crown at top [m]. */
export const trappedRatio = (bore: number, roof: number, chamber: number): number =>
  (boreArea(bore) * roof) / chamber + 1;
/** Share of the bore that is squish band [1]: 1 - (d/b)². */
export const squishShare = (bore: number, chamberDiameter: number): number => 1 - (chamberDiameter / bore) ** 2;
