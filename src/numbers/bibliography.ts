/** Every source a card may name. */
import { CHASSIS_SOURCES } from './sources-chassis.ts';
import { TRACK_SOURCES } from './sources-track.ts';

export type { Source } from './source.ts';

export const BIBLIOGRAPHY = { ...CHASSIS_SOURCES, ...TRACK_SOURCES } as const;

export type SourceKey = keyof typeof BIBLIOGRAPHY;
