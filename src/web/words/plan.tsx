/** What is said of the plan, who works and when. */
export const planWords = {
  beginClosingUp: (when: string) => `begin closing up ${when}`,
  endOfTimeThere: 'end of the time there is',
  hatchedOnlyForClosing: ' Hatched: only for closing up.',
  filledAtWorkDotted: (text: string) =>
    `Filled: at work. Dotted: waits for somebody. On the left: how the kart stands.${text}`,
  hideTable: 'Hide the table',
  sameAsTable: 'The same as a table',
  whoDoesWhatWhenTable: (people: number, span: string) =>
    `Who does what when: ${people === 1 ? 'one person' : `${people} people`}, ${span}. The table says the same.`,
  when: 'When',
  who: 'Who',
  step: 'Step',
  minutes: 'Minutes',
  whoDoesWhatWhen: 'Who does what when',
  no: 'No.',
  with: 'With',
  done: 'Done',
  caution: (caution: string) => `Caution: ${caution}`,
  andHelp: ' and help',
  reasonsAreStillBeing: 'The reasons are still being worked out.',
  whyNow: 'Why now',
  whyNowOf: (who: string) => `${who}. Why now`,
  minToCloseUp: (closing: number) => ` · ${closing} min to close up from here`,
  beyondTimeThere: 'beyond the time there is',
  atStart: (minutes: number, span: string) => (minutes < 0.5 ? 'at the start' : `after ${span}`),
  takesPeopleAskSomebody: (number: number | string) => `Takes ${number} people: ask somebody to help.`,
  onThisKartUsually: (timings: number, span: string, span2: string, span3: string) =>
    `${timings === 1 ? 'Once' : `${timings} times`} on this kart: usually ${span}, 8 of 10 within ${span2}, planned with ${span3}.`,
  costsNothingMore: (minutes: number, span: string) =>
    minutes === 0 ? ' Costs nothing more.' : ` ${span} more another time.`,
  atMostLonger: (most: number, span: string) =>
    most <= 0 ? 'no plan for this work is shorter' : `at most ${span} longer than the shortest there can be`,
  bestSoFar: 'Best so far: ',
  moreTime: (safetyShortBy: number, span: string) => (safetyShortBy > 0 ? `${span} more` : 'more time'),
  orSecondPerson: (safetyFitsWith: number) =>
    safetyFitsWith === 2 ? ', or a second person' : `, or ${safetyFitsWith} people`,
  notFitToRunAfter: (more: string, help: string) => `Not fit to run after this plan: ${more}${help}.`,
  withHowMuchTime: 'With how much time each enters is worked out once the plan stands.',
  eachSaysWithHowMuch: (needsStep: number, span: string) =>
    `Each says with how much time in all it enters${needsStep > 1 ? `, to ${span}` : ''}; less would not do.`,
  moreWork: (whole: number, span: string, span2: string) => (whole > 0 ? `${span} more work` : `${span2} less work`),
  noLonger: 'no longer in it',
  planHasChanged: (counts: string) => `The plan has changed: ${counts}.`,
  itsProgramCould: 'its program could not be fetched',
  planForTheseHands: (message: string) => `The plan for these hands and times could not be made: ${message}.`,
  lastPlanStaysSee: 'The last plan stays. See that the server still runs, then load the page again.',
  stopLookingKeepBestSo: 'Stop looking: keep the best so far',
  stop: 'Stop',
  againPlanFromNow: 'Again: plan from now',
  again: 'Again',
  planningForPeople: (people: number) => `Planning for ${people} people …`,
  closingUpTakesAllTime: (closeBy: number, by: string) =>
    closeBy === 0 ? 'Closing up takes all the time there is.' : `Begin closing up ${by}.`,
  leftOutForWant: 'Left out for want of time',
  entersWithInAll: (span: string) => ` Enters with ${span} in all.`,
  whatChanged: 'What changed',
  because: (why: string) => `Because: ${why}`,
  showRows: 'Show the rows',
  new: 'New',
  noLongerIn: 'No longer in it',
  atAnotherPlace: 'At another place',
  seen: 'Seen',
  whoAndWhen: 'Who and when',
  peopleWhoWorkOnKart: 'People who work on the kart',
  timesThere: 'Times there are',
  noEndSaidEverythingDue: 'No end said: everything due is planned.',
  theseTimesAreOverSay: () => (
    <>
      <b>These times are over.</b> Say the time that is still to come.
    </>
  ),
  sayHowMuchTimeThere: (count: number) => (count === 0 ? 'Say how much time there is' : 'One more time'),
  onePerson: (people: number) => (people === 1 ? 'one person' : `${people} people`),
  nameOfPerson: (person: number) => `Name of person ${person}`,
  time: (n: number) => `Time ${n}`,
  timeHalfHourLess: (n: number) => `Time ${n}: half an hour less`,
  howLongTime: (n: number) => `How long, time ${n}`,
  timeHalfHourMore: (n: number) => `Time ${n}: half an hour more`,
  sayHowLong: () => (
    <>
      <b>Say how long with its unit.</b> 3 h, 90 min, or 1 h 30 min.
    </>
  ),
  begins: 'Begins',
  ifItIsKnown: 'if it is known',
  leaveOutTime: (n: number) => `Leave out time ${n}`,
  leaveOut: 'Leave out',
} as const;
