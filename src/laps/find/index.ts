export type { Crossing } from './crossing.ts';
export { crossingsOf } from './crossing.ts';
export { type Gate, type GateLine, gateAcross, lineOf, turnedRound } from './gate.ts';
export { type HandTimed, handTimedLaps, type NotTimed } from './hand-timed.ts';
export { type Doubt, type Lap, type Laps, lapsOf, type Outing, type Span } from './laps.ts';
export { type Motion, motionOf, planeOf } from './motion.ts';
export { type Place, type Plane, type Point, planeAt, planeError } from './plane.ts';
export { gateBetween, type ProposedGate, proposeGate } from './propose.ts';
export { overLaps, type Receiver, receiverFor, spreadOf } from './spread.ts';
