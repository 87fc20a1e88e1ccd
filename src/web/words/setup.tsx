/** What the set-up sheet says. */
import type { ComponentChild } from 'preact';

export const setupWords = {
  evening: (date: string) => `the evening of ${date}`,
  whatIsSaidOfChanges: (error: string) => `What is said of the changes could not be fetched: ${error}.`,
  settingsBelowAreWhole: 'The settings below are whole. See that the server still runs, then load the page again.',
  entry: 'Entry',
  middle: 'Middle',
  exit: 'Exit',
  use: 'Use',
  whatIsSaidOfThese: 'What is said of these changes',
  nothingIsKnown: 'Nothing is known to be said of them.',
  ofOtherWay: (change: string) => `Of the other way: ${change}`,
  source: 'Source',
  but: 'But',
  whatThisKartShowed: 'What this kart showed',
  fromRecordAloneWhether: 'From the record alone; whether a change made it faster takes laps both ways.',
  before: 'Before',
  after: 'After',
  noted: 'Noted',
  cannotBeLaidSide: (doubts: string) => `cannot be laid side by side: ${doubts}`,
  nothingRan: 'nothing ran',
  setUpSheet: 'Set-up sheet',
  kartFromAbove: 'The kart from above',
  setUp: 'Set-up',
  nothingIsInRecordYet: 'Nothing is in the record yet.',
  asRecordHad: (moment: string) => `As the record had it on ${moment}.`,
  makersSheetAndClass: (at: string) => `${at} The maker's sheet and the class rules win.`,
  writeChange: 'Write a change',
  print: 'Print it',
  signatureOfWhoSet: 'Signature of who set it up',
  asItStands: 'As it stands',
  settings: (count: number) => `${count} settings`,
  noSettingIsInRecord: 'No setting is in the record. Write one down when it is set.',
  setting: 'Setting',
  value: 'Value',
  since: 'Since',
  tyres: (tyres: string) => `Tyres: ${tyres}`,
  readBy: (date: string, who: ComponentChild) => (
    <>
      read {date}, {who}
    </>
  ),
  setBy: (date: string, who: ComponentChild) => (
    <>
      set {date}, {who}
    </>
  ),
  heldAgainst: 'Held against',
  holdItAgainst: 'Hold it against',
  theBaseline: 'the baseline',
  aDay: 'a day …',
  asItStoodAtEnd: 'As it stood at the end of',
  noSetUpWasWritten: 'No set-up was written down: there is no baseline yet.',
  changed: 'Changed',
  against: (named: string) => `Against ${named}.`,
  nothingDiffers: 'Nothing differs.',
  notWrittenDown: 'not written down',
} as const;
