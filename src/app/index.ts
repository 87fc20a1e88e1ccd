import type { BareProblem } from './bare-problem.ts';
import type { QrCode } from './qr.ts';

export { type App, type AppParts, createApp, type Filed, type Imported, type PlainApp, type Verified } from './app.ts';
export type { BareProblem, QrCode };
/** The problems that can be asked bare; fetched when asked, for no page needs them at its start. */
export const bareProblems = async (): Promise<readonly BareProblem[]> =>
  (await import('./bare-problems.ts')).bareProblems;
export { appFor, type Visitor } from './access.ts';
export { type AlikeAnswer, type AlikeQuestion, askForLooks, type LooksWanted, whatElse } from './alike.ts';
/** Draws codes; fetched when asked, for it is needed on paper alone. */
export const qrCodes = async (): Promise<(text: string) => QrCode> => (await import('./qr.ts')).qrOf;
export type { At, ForEvent } from './asking.ts';
export { type Beginning, beginKart, beginningProblems, wornByHours } from './begin.ts';
export { calendarOf } from './calendar.ts';
export { type CompareAnswer, type CompareQuestion, compareLaps } from './compare-laps.ts';
export { copyBook } from './copy-book.ts';
export type { DemoText } from './demo.ts';
export { type BookSide, type ChainEnds, type Exchanged, exchange, sameBook, type Taken } from './exchange.ts';
export type { ForgetAsk, Forgot } from './forget.ts';
export { askWithKart, fromKart, type Said } from './from-kart.ts';
export { type HelpedAnswer, type HelpedQuestion, helpedOf } from './helped.ts';
export { importLaps } from './import-laps.ts';
export { instrumentsFor } from './instruments.ts';
export { judgeTyped, type ReadingJudged } from './judge.ts';
export { type KartChange, kartChange } from './kart-change.ts';
export {
  type JointChoice,
  type KartChoices,
  kartChoices,
  MAIN_DIMENSIONS,
  mayBeNamed,
  type PartChoice,
} from './kart-choices.ts';
export { edited, type KartEdit } from './kart-text.ts';
export { KEEP, type KeepRules, keepRulesIn, noLongerKept } from './keep-rules.ts';
export { boxesOf, type Label, type LabelAsk, labelsFor } from './labels.ts';
export { type LapsIn, type LogReport, type LogSaid, lapsOfBook, type SessionSaid } from './laps.ts';
export type { LapBook } from './laps-run.ts';
export { type LifeAnswer, type LifeQuestion, type LivesAnswer, lifeOf, livesAsked } from './life.ts';
export { listSource } from './list-source.ts';
export { type OpenOnKart, type OpenPlace, openOnKart, toolsNamed } from './open-on-kart.ts';
export { type FirstAnswers, firstAnswers, kartAmong, LAST_READ, type Opening, openingOf, toShow } from './opening.ts';
export { outingsOf } from './outings.ts';
export { type PlanAsk, planningOf, type Replanned } from './plan.ts';
export type { AppendOutcome, BookStore, Clock, Ids, KartRead, KartReader, Kept, Own, Snapshots } from './ports.ts';
export {
  type LapsPredicted,
  type PredictedWhole,
  type PredictFrom,
  type PredictQuestion,
  predictingLaps,
  predictLaps,
} from './predict-laps.ts';
export { ASKS_AGAIN, CODES, type Code, fromKartFile, type Problem, Refusal, sentence } from './problem.ts';
export { type Proof, proofOf } from './proof.ts';
export {
  type Answers,
  createQueries,
  type DueAnswer,
  type FactFilter,
  type FactLine,
  type FitAnswer,
  type KartLine,
  type Queries,
} from './queries.ts';
export { MOST_KEPT } from './read-log.ts';
export type { Limits, ReadingInput } from './reading.ts';
export { limitsInWords, readReading, said as readingSaid } from './reading.ts';
export type { Recorded, Written } from './record.ts';
export {
  deviceOf,
  enter,
  isFresh,
  isTeam,
  NOBODY,
  type PairedDevice,
  plainCode,
  type Register,
  type RegisterState,
  ROLES,
  type Role,
  registerShape,
  withChain,
  withCode,
  withDevice,
  withoutPerson,
} from './register.ts';
export { inWords, openOf, type Signature, standsOpen } from './release.ts';
export { type Season, seasonOf } from './season.ts';
export { goesBy, type SessionSheet, sessionSheetOf } from './session-sheet.ts';
export { type SheetQuestion, sheetOf } from './sheet.ts';
export { type SparesAnswer, type SparesQuestion, sparesOf } from './spares.ts';
export { takeAlong } from './take-along.ts';
export { type TakenOut, takenOutSince } from './taken-out.ts';
export { tarOf } from './tar.ts';
export { changesIn, type DayRun, type TestDay, testDays } from './test-days.ts';
export type { TrackQuestion } from './track.ts';
export {
  type RiskTexts,
  type SecondWanted,
  type WeakLinksAnswer,
  type WeakLinksQuestion,
  wantSecond,
  weakLinksOf,
} from './weak-links.ts';
export { CLOCK_SLACK_MS, moment } from './when.ts';
