/**
 * Questions to a worker, and its answers. Only plain data goes across, so a refusal is taken apart on one side and put together
 * on the other; whatever else went wrong arrives as an error with its message.
 */
import { type Problem, Refusal } from '../../app/index.ts';
import { Answered, OutOfReach } from './remote.ts';

export type Asked = { readonly number: number; readonly of: string; readonly args: readonly unknown[] };
export type Heard =
  | { readonly number: number; readonly answer: unknown }
  | { readonly number: number; readonly wrong: Wrong };

export type Wrong = {
  readonly name: string;
  readonly message: string;
  readonly remedy?: string;
  readonly status?: number;
  readonly problems?: readonly Problem[];
};

export function takenApart(error: unknown): Wrong {
  if (!(error instanceof Error)) return takenApart(new Error(String(error)));
  const { name, message } = error;
  if (error instanceof Answered) return { name, message, status: error.status, problems: error.problems };
  if (error instanceof Refusal) return { name: 'Refusal', message, problems: error.problems };
  return { name, message, ...('remedy' in error && typeof error.remedy === 'string' && { remedy: error.remedy }) };
}

export function putTogether({ name, message, remedy, status, problems }: Wrong): Error {
  if (status !== undefined) return new Answered(status, problems ?? []);
  if (problems !== undefined) return new Refusal(problems);
  if (name === 'OutOfReach') return new OutOfReach(message);
  return Object.assign(new Error(message), { name, ...(remedy !== undefined && { remedy }) });
}
