/** What is said while a printed work list is typed back. */
export const typeInWords = {
  beginWithNumberOfStep: 'begin with the number of the step: 12 142.5',
  noStepOfThisList: 'no step of this list has that number',
  noLongerInPlanNothing: 'no longer in the plan: nothing is to be written',
  isDoneAlready: 'is done already',
  standsInAnotherLineToo: 'stands in another line too',
  sayWhyNoLight: (n: number, what: string) => `say why: ${n} ${what} no light`,
  handWorkIsDone: 'hand work is done or comes later: write later and why',
  cannotBeDone: (why: string) => `cannot be done: ${why}`,
  putOff: (why: string) => `put off: ${why}`,
  sayHowItWasMended: 'say how it was mended',
  nothingIsRead: 'nothing is read at this step',
  handWorkDoesNotFail: 'hand work does not fail: write the find down on the sheet Record',
  sayWhatIsWrongFails: (n: number) => `say what is wrong: ${n} fails bent`,
  fails: (reading: string, defect: string) => `fails${reading}: ${defect}`,
  needsItsValue: (unit: string | null) => `needs its value in ${unit}`,
  done: (reading: string) => `done${reading}`,
  stepsWrittenEachEntry: (count: number) => `${count} steps written, each an entry of its own.`,
  theWork: 'The work',
  typeInList: 'Type in the list',
  lineForEachStep: () => (
    <>
      A line for each step as it stands on the paper: its number, then what was read. Or <b>12 fails bent</b>,{' '}
      <b>12 not no such part</b> when it cannot be done, <b>12 later no light</b>.
    </>
  ),
  whichList: 'Which list',
  printedSteps: (date: string, time: string, count: number) => `printed ${date} ${time}, ${count} steps`,
  planAsItIsNumbered: 'the plan as it is numbered now',
  thisDevicePrinted:
    'This device printed no list: the numbers are taken as the plan has them now. See that each line names the step you mean.',
  lines: 'Lines',
  asItWillBeWritten: 'As it will be written',
  nothingTypedYet: 'Nothing typed yet.',
  itIsSoRecord: 'It is so: record it as it stands on the paper',
  eachIsWrittenAsDone: (who: string) =>
    `Each is written as done by ${who}, now. Another person types in their own lines under their own name; second looks belong to another pair of eyes.`,
  writing: 'Writing …',
  putLinesRightFirst: (bad: number, count: number) =>
    bad > 0 ? `Put ${bad} lines right first` : `Write ${count} steps down`,
  line: (line: number) => `line ${line}`,
  lineRefused: (line: number, title: string, message: string) => `Line ${line}, ${title}: ${message}`,
} as const;
