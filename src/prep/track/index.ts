/** The numbers of a session to come, asked with what the record says. */
export { airQuestion } from './air.ts';
export { type AfterSaid, afterSession, coldSet, type PressuresSaid, type TrackDraft } from './facts.ts';
export type { AirPoint, Lead, Missing, Since, TrackAsk, TrackPart, TrackSheet, TrackSubject } from './model.ts';
export { type Pressures, type TrackSession, trackRecord } from './session.ts';
export { sprockets } from './settings.ts';
export { trackSheet } from './sheet.ts';
