export { type ChosenColumns, choiceFrom, gatesByTrack } from './remembered.ts';
export { isComparable, type LapSession, lapSessions, type SessionLap } from './sessions.ts';
export { gateFault, gateForBook, gateFromBook, movingOf, timedOf, withMarks } from './timed.ts';
