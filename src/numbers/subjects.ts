/** Every number that can be asked alone. One more: its file, a line here, a row in checks/. */
import { air } from './air/index.ts';
import { alignment } from './alignment/index.ts';
import { bolt } from './bolt/index.ts';
import { brakes } from './brakes/index.ts';
import { carburation } from './carburation/index.ts';
import { chainDrive } from './chain-drive/index.ts';
import { drag } from './drag/index.ts';
import { engine } from './engine/index.ts';
import { frontEnd } from './front-end/index.ts';
import { gearing } from './gearing/index.ts';
import { hubHold } from './hub-hold/index.ts';
import { premix } from './premix/index.ts';
import { rearTrack } from './rear-track.ts';
import { retention } from './retention/index.ts';
import { scales } from './scales/index.ts';
import type { Subject } from './subject.ts';
import { tolerance } from './tolerance.ts';
import { tyres } from './tyres/index.ts';
import { wheelLoads } from './wheel-loads/index.ts';

export const subjects: readonly Subject[] = [
  rearTrack,
  tolerance,
  hubHold,
  brakes,
  bolt,
  retention,
  scales,
  frontEnd,
  wheelLoads,
  alignment,
  engine,
  air,
  gearing,
  chainDrive,
  tyres,
  drag,
  carburation,
  premix,
];
