/** Which subject has a plate. A subject without one is answered in words and figures. */
import { airPlate } from './air.tsx';
import { alignmentPlate } from './alignment.tsx';
import type { Asked, Drawn, DrawPlate } from './asked.ts';
import { boltPlate } from './bolt.tsx';
import { brakesPlate } from './brakes.tsx';
import { carburationPlate } from './carburation.tsx';
import { chainPlate } from './chain.tsx';
import { dragPlate } from './drag.tsx';
import { enginePlate } from './engine.tsx';
import { frontEndPlate } from './front-end.tsx';
import { gearingPlate } from './gearing.tsx';
import { hubHoldPlate } from './hub-hold.tsx';
import { premixPlate } from './premix.tsx';
import { rearTrackPlate } from './rear-track.tsx';
import { retentionPlate } from './retention.tsx';
import { scalesPlate } from './scales.tsx';
import { tolerancePlate } from './tolerance.tsx';
import { tyresPlate } from './tyres.tsx';
import { wheelLoadsPlate } from './wheel-loads.tsx';

export type { Asked, Drawn } from './asked.ts';

export const PLATES: Readonly<Record<string, DrawPlate>> = {
  'rear-track': rearTrackPlate,
  bolt: boltPlate,
  brakes: brakesPlate,
  'hub-hold': hubHoldPlate,
  retention: retentionPlate,
  tolerance: tolerancePlate,
  scales: scalesPlate,
  engine: enginePlate,
  'front-end': frontEndPlate,
  'wheel-loads': wheelLoadsPlate,
  alignment: alignmentPlate,
  air: airPlate,
  gearing: gearingPlate,
  chain: chainPlate,
  tyres: tyresPlate,
  drag: dragPlate,
  carburation: carburationPlate,
  premix: premixPlate,
};

export const plateOf = (subject: string, asked: Asked): Drawn | undefined => PLATES[subject]?.(asked);
