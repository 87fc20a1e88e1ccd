/** What the weak links say. */
import type { ComponentChild } from 'preact';

export const weakWords = {
  whatIsLeftByMinutes: 'What is left by minutes',
  jointsLeftThatAlone:
    'Joints left that alone are enough and could have a second, and the chance left of each hazard of severity 1 over the event, by the minutes spent. The table says the same.',
  jointsLeftThatAloneAre: 'joints left that alone are enough',
  minutes: 'Minutes',
  money: 'Money',
  severityLeft: 'Severity 1, 2 left',
  ofEventsWhereItChanges: 'Of 1,000 events, where it changes',
  ofEventsLikeThisOne: 'of 1,000 events like this one, from what is known',
  aloneIsEnough: (count: number) => (count === 1 ? '1 alone is enough' : `${count} alone are enough`),
  severity: (severity: number) => `severity ${severity}`,
  tooLargeToWorkOut: 'too large to work out',
  notKnownAtLeast: (words: string) => `not known; at least ${words}`,
  howLikelyNotKnown: 'how likely: not known',
  tooLargeToWorkOutNothing: 'Too large to work out: nothing is said of it.',
  nothingAloneIsEnough: 'Nothing alone is enough.',
  kartFromAbovePlaces: (name: string, count: number, hazard: string) =>
    `Kart ${name} from above: ${count} places where one link alone means ${hazard}, listed beside`,
  placeOnMap: (n: number) => `Place ${n} on the map`,
  howLikelyNotKnownWhy: (unknown: string | null) => `How likely: not known. ${unknown}`,
  howLongItLasts: 'How long it lasts',
  twoTogether: 'Two together',
  theLikeliest: (count: number) => `The likeliest ${count}.`,
  moreThatAreEnoughOnly: (rest: string) => `More that are enough only together: ${rest}.`,
  and: 'and',
  notKnown: 'not known',
  add: (retention: string) => `Add ${retention}`,
  onNoLongerWanted: (retention: string, joint: string) => `${retention} on ${joint} no longer wanted`,
  toTakeItBackFile: ' To take it back, file a kart file that does not name it.',
  inPlan: (retention: string, joint: string, text: string) => (
    <>
      <b>In the plan:</b> {retention} on {joint}.{text}
    </>
  ),
  toStep: 'To the step',
  takeItBack: 'Take it back',
  itIsNotWanted: 'It is not wanted',
  keep: 'Keep it',
  makeItJobAsk: (retention: string, joint: string) => `Add ${retention} to ${joint}: make it a job`,
  itNeeds: (needs: string) => `It needs ${needs}. `,
  fitOnKartFileNames: (retention: string, part: string, name: string, needs: string) => (
    <>
      <b>
        Fit {retention} on {part}, {name}.
      </b>{' '}
      {needs}The kart file names it from now on, its check is due, and the kart is not fit until it is there and looked
      at.
    </>
  ),
  neverDrillWeldOrWire: 'Never drill, weld or wire what its maker did not make for it.',
  whoWants: 'Who wants it',
  writing: 'Writing …',
  makeItJob: 'Make it a job',
  leave: 'Leave it',
  eventNoneIsPlanned: 'an event: none is planned',
  howLikelyOver: (event: string) => `How likely over ${event}`,
  notKnownThereIsNeither: 'Not known: there is neither record nor guess.',
  lowNumber: (basis: string, code: string) => `${basis} ${code} A low number is no permission.`,
  noNumber: (count: number) => `No number for ${count}`,
  thereByKartFileLooked: 'There by the kart file, looked at by nobody since: counted as perhaps gone',
  overSeasonOfEvents: (events: number) =>
    events === 1 ? 'Over this one event' : `Over a season of ${events} events alike`,
  codeOrdersHazards: (over: string, whole: boolean, code: string, level: string) =>
    `${over} ${whole ? '' : 'at least '}${code}, ${level}: a code orders hazards, no more.`,
  oneRetention: 'one retention',
  severalThatOneThing: 'several that one thing takes',
  partItself: 'the part itself',
  kartFromAboveTitle: 'Kart from above with the places of links that alone are enough; the numbers stand in the tables',
  hazardColumn: 'What would hurt us',
  severityColumn: 'Severity',
  aloneColumn: 'Alone enough',
  overEventColumn: 'Over the event',
  overSeasonColumn: 'Over the season',
  codeAndLevel: (code: string, level: string) => `${code}, ${level}`,
  fitColumn: 'Second retention, and where',
  needsColumn: 'It needs',
  doneColumn: 'Done',
  endsSinglePoint: (severity: number) => `Ends a single point of severity ${severity}.`,
  firstOf: (shown: number, count: number) => `the first ${shown} of ${count}`,
  secondCouldBe: (retentions: string) => `Second could be: ${retentions}.`,
  restOnScreen:
    'Each line alone is enough; look at it and tick it. Its chance is over the event. Links of severity 3 and 4, pairs, what each link means and where a number comes from stand on the screen.',
  wholeIsNotKnownAtLeast: (words: ComponentChild) => <>The whole is not known. At least {words}</>,
  linksThatAloneAreEnough: (count: number | undefined) =>
    count === undefined ? 'What alone is enough' : `What alone is enough: ${count} links`,
  severityAloneEnough: (severity: number, count: number) => `severity ${severity}, ${count} alone enough`,
  whichSecondRetention: 'Which second retention pays most',
  singlePointsOfSeverity:
    'Single points of severity 1 first, then of severity 2, then the most chance taken away. Exact: nothing else for as much takes more away. A pair never counts as less likely than what both have in common.',
  minutesThere: 'Minutes there are',
  noLimit: 'no limit',
  moneyThere: 'Money there is',
  thereIsNoJointLeft: 'There is no joint left that a second retention could be added to.',
  nothingCanBeFitted: 'Nothing can be fitted for that.',
  onlyFirst: (few: number) => `Only the first ${few}`,
  all: (count: number) => `All ${count}`,
  minOfMoney: (minutes: number, money: number) => `${minutes} min, ${money} of money.`,
  withAllOfThese: 'With all of these',
  overEventFrom: 'over the event, from what is known',
  hazardWithSeverity: (hazard: string, severity: number) => `${hazard}, severity ${severity}`,
  withMoreMinutes: (minutes: number) => `With ${minutes} more minutes`,
  untilThenItCounts: (said: string) => `${said} Until then it counts as no limit.`,
  on: (retention: string, joint: string) => `${retention} on ${joint}`,
  takesSinglePoint: (singleOf: number) => `; takes a single point of severity ${singleOf} away`,
  minutesMoneyAndSingle: (minutes: number, money: number, singleOf: string) =>
    `${minutes} min, ${money} of money${singleOf}`,
  atBest: (hazard: string, words: string) => `${hazard}: at best ${words}`,
  needs: (needs: string) => `Needs ${needs}.`,
  onMinOfMoney: (retention: string, joint: string, minutes: number, money: number) =>
    `${retention} on ${joint} (${minutes} min, ${money} of money)`,
  jointsLeftThatAloneAreEnough: (severity1: number, severity2: number) =>
    `Joints left that alone are enough and could have a second: ${severity1} of severity 1, ${severity2} of severity 2.`,
  weakLinks: 'Weak links',
  kartFromAbove: 'The kart from above',
  whatWouldHurtUs: 'What would hurt us',
  reckoningWhatAlone: 'Reckoning what alone and together is enough …',
  makersManualAndClass: (note: string) => `${note} The maker's manual and the class rules win.`,
  livesOfParts: 'Lives of parts',
  sparesBox: 'Spares box',
  whatPaysMost: 'What pays most',
  print: 'Print it',
  signatureOfWhoLooked: 'Signature of who looked at each link',
  whatEachLinkMeans: 'What each link means for it',
  fromWhatIsKnownAlone: 'From what is known alone.',
  letsGo: 'Lets go',
  buys: 'Buys',
  costs: 'Costs',
  from: 'From',
} as const;
