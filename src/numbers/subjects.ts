/** Every number that can be asked alone. One more: its file, a line here, a row in checks/. */
import { rearTrack } from './rear-track.ts';
import type { Subject } from './subject.ts';
import { tolerance } from './tolerance.ts';

export const subjects: readonly Subject[] = [rearTrack, tolerance];
