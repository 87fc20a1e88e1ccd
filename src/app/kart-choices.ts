/** What can be tapped of a kart: its parts with those taken away, how each is held, kinds for new ones, its dimensions. */
import { type Kart, type LibraryTexts, type PartId, readLibrary, SYSTEMS, type System } from '../kart/index.ts';
import { additionsFor, type Catalogue } from '../risk/index.ts';

export type JointChoice = {
  readonly name: string;
  readonly kind: string;
  readonly retention: string;
  readonly second: string | null;
  /** What template or kind have as its second. */
  readonly beneath: string | null;
  /** What its check accepts now. */
  readonly accept: string;
  /** Second retentions that go with it. */
  readonly could: readonly string[];
};
export type PartChoice = {
  readonly part: PartId;
  readonly kind: string;
  readonly system: System;
  readonly on: boolean;
  /** The template has it, so it can be tapped in again. */
  readonly below: boolean;
  readonly joints: readonly JointChoice[];
};
export type KindChoice = { readonly kind: string; readonly system: System };
export type KartChoices = {
  readonly parts: readonly PartChoice[]; // in the order of the walk-round
  readonly kinds: readonly KindChoice[];
  readonly dimensions: readonly { readonly name: string; readonly text: string; readonly measured: boolean }[];
};

/** What the plan and the numbers rest on first; common practice. */
export const MAIN_DIMENSIONS: readonly string[] = [
  'wheelbase',
  'overall rear width',
  'overall front width',
  'axle length',
  'axle diameter',
  'front tyre diameter',
  'rear tyre diameter',
  'mass with driver',
];

const LONGEST_NAME = 90;
/** May a new part be called so? As the reader of kart files takes names, and as no other part is called. */
export function mayBeNamed(name: string, parts: readonly PartChoice[]): boolean {
  const part = name.trim();
  const isShaped = part !== '' && part.length <= LONGEST_NAME && !/[/\n]/.test(part);
  return isShaped && part !== 'self' && !part.startsWith('mate ') && parts.every(one => one.part !== part);
}

export function kartChoices(kart: Kart, library: LibraryTexts, retentions: Catalogue): KartChoices {
  const { templates, kinds } = readLibrary(library);
  const below = partsOf(templates.get(kart.template ?? '')?.value);
  const systems = new Map<string, System>();
  const learn = ({ kind, system }: PartFile): void => {
    if (kind && system) systems.set(kind, system);
  };
  for (const { value } of templates.values()) for (const part of partsOf(value).values()) learn(part);
  const on = Object.values(kart.parts).map(({ id, kind, system, joints }): PartChoice => {
    learn({ kind, system });
    return {
      part: id,
      kind,
      system,
      on: true,
      below: below.has(id),
      joints: joints.flatMap(joint => {
        const name = kart.joints[joint]?.name ?? '';
        const beneath = secondIn(below.get(id), name) ?? secondIn(kinds.get(kind), name);
        return jointChoice(kart, joint, beneath, retentions);
      }),
    };
  });
  const out = [...below].flatMap(([part, { kind = '', system = 'bodywork' }]): readonly PartChoice[] =>
    Object.hasOwn(kart.parts, part) ? [] : [{ part, kind, system, on: false, below: true, joints: [] }],
  );
  return {
    parts: [...on, ...out].sort((a, b) => SYSTEMS.indexOf(a.system) - SYSTEMS.indexOf(b.system)),
    kinds: [...kinds.keys()].sort().map(kind => ({ kind, system: systems.get(kind) ?? 'bodywork' })),
    dimensions: Object.entries(kart.dimensions).map(([name, { text }]) => ({
      name,
      text,
      measured: kart.unmeasured?.includes(name) !== true,
    })),
  };
}

/** The keys of a part or a kind that are asked here. */
type PartFile = {
  readonly kind?: string | undefined;
  readonly system?: System | undefined;
  readonly joints?: Readonly<Record<string, unknown>> | undefined;
};

const partsOf = (template: { readonly parts?: Readonly<Record<string, PartFile | 'none'>> | undefined } | undefined) =>
  new Map(Object.entries(template?.parts ?? {}).flatMap(([part, file]) => (file === 'none' ? [] : [[part, file]])));

function secondIn(holder: Pick<PartFile, 'joints'> | undefined, name: string): string | undefined {
  const joint = holder?.joints?.[name];
  const second = typeof joint === 'object' && joint !== null && 'second' in joint ? joint.second : undefined;
  return typeof second === 'string' && second !== 'none' ? second : undefined;
}

function jointChoice(
  kart: Kart,
  id: string,
  beneath: string | undefined,
  retentions: Catalogue,
): readonly JointChoice[] {
  const joint = kart.joints[id];
  if (joint === undefined) return [];
  const { name, kind, retention, second = null, item } = joint;
  return [
    {
      name,
      kind,
      retention,
      second,
      beneath: beneath ?? null,
      accept: kart.items[item]?.accept ?? retention,
      could: additionsFor(joint, retentions).map(one => one.retention.name),
    },
  ];
}
