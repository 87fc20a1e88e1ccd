import type { DimensionedProps } from '../dimensioned/sheet.tsx';
import type { FirstRunProps } from '../first-run/sheet.tsx';
import type { JointsProps } from '../joints/sheet.tsx';
import type { KartFileProps } from '../kart-file/use-kart-file.ts';
import type { LabelsProps } from '../labels/sheet.tsx';
import type { PartProps } from '../part/sheet.tsx';
import type { SearchProps } from '../search/sheet.tsx';
import type { TypeInProps } from '../type-in/sheet.tsx';
import { fetched } from './fetched.tsx';
import type { FitProps } from './fit.tsx';
import type { KartProps } from './kart.tsx';
import type { RecordProps } from './record.tsx';

export const PartPage = fetched<PartProps>('part', 'part', async () => (await import('../part/sheet.tsx')).PartSheet);
export const DimensionedPage = fetched<DimensionedProps>(
  'drawing',
  'drawing',
  async () => (await import('../dimensioned/sheet.tsx')).Dimensioned,
);
export const KartPage = fetched<KartProps>('kart', 'kart', async () => (await import('./kart.tsx')).KartSheet);
export const JointsPage = fetched<JointsProps>(
  'joints',
  'joints',
  async () => (await import('../joints/sheet.tsx')).Joints,
);
export const LabelsPage = fetched<LabelsProps>(
  'labels',
  'labels',
  async () => (await import('../labels/sheet.tsx')).Labels,
);
export const SearchPage = fetched<SearchProps>(
  'search',
  'search',
  async () => (await import('../search/sheet.tsx')).Search,
);
export const TypeInPage = fetched<TypeInProps>(
  'type-in',
  'list',
  async () => (await import('../type-in/sheet.tsx')).TypeIn,
);
export const RecordPage = fetched<RecordProps>(
  'record',
  'record',
  async () => (await import('./record.tsx')).RecordSheet,
);
export const FitPage = fetched<FitProps>('fit', 'release', async () => (await import('./fit.tsx')).Fit);
export const FirstRunPage = fetched<FirstRunProps>(
  'start',
  'questions',
  async () => (await import('../first-run/sheet.tsx')).FirstRun,
);
export const BuildPage = fetched<KartFileProps>(
  'build',
  'parts',
  async () => (await import('../build/sheet.tsx')).Build,
);
export const FilePage = fetched<KartFileProps>(
  'file',
  'file',
  async () => (await import('../kart-file/sheet.tsx')).FileSheet,
);
