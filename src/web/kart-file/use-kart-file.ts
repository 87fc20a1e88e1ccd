/** The kart file under work: its text, what is wrong with it, what it would do, and filing it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { fetchShipped } from '../weak/texts.ts';
import { kartFileWords } from '../words/kart-file.ts';
import { type Checking, startChecking, type Told } from './checking.ts';
import { type Filed, filedIn, keepText, keptText } from './working-text.ts';

export type KartFileUse = {
  readonly filed: Filed;
  readonly text: string;
  readonly put: (text: string) => void;
  /** As it is in force again. */
  readonly leave: () => void;
  /** Another file was filed since this text was begun. */
  readonly overtaken: boolean;
  /** Of the text as it stands; undefined while it is being read. */
  readonly told: Told | undefined;
  /** Of the last text that could be read, so that what is tapped does not go away under a finger. */
  readonly last: Told | undefined;
  readonly file: () => Promise<void>;
  readonly refused: readonly Problem[];
  /** The fact just filed here; striking it brings the file before back. */
  readonly done: string | undefined;
  readonly undo: () => Promise<void>;
};

export type KartFileProps = {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
};

export function useKartFile({ snapshot, session, keep, who }: KartFileProps): KartFileUse {
  const { kart } = snapshot;
  const filed = filedIn(snapshot) ?? { fact: '', text: '', by: '', at: '' };
  const [working, setWorking] = useState(() => keptText(keep, kart.name));
  const [told, setTold] = useState<{ of: string; told: Told }>();
  const [last, setLast] = useState<Told>();
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const [done, setDone] = useState<string>();
  const text = working?.text ?? filed.text;
  const now = useRef(text);
  now.current = text;

  const checking = useRef<Checking | undefined>(undefined);
  useEffect(() => {
    const started = startChecking(
      heard => {
        setTold({ of: now.current, told: heard });
        if (heard.choices) setLast(heard);
      },
      message => setRefused(session.ask.problems(new Error(message))),
    );
    checking.current = started;
    return started.stop;
  }, [session]);
  useEffect(() => {
    Promise.all([session.ask.library(), fetchShipped()]).then(
      ([library, { retentions }]) =>
        checking.current?.know({ library, retentions, kart, facts: snapshot.facts.map(({ fact }) => fact) }),
      error => setRefused(session.ask.problems(error)),
    );
  }, [session, kart, snapshot.facts]);
  useEffect(() => checking.current?.check(text), [text, kart, snapshot.facts]);

  const put = (next: string): void => {
    const one = next === filed.text ? undefined : { from: working?.from ?? filed.fact, text: next };
    keepText(keep, kart.name, one);
    setWorking(one);
    setRefused([]);
    setDone(undefined);
  };
  const file = async (): Promise<void> => {
    try {
      const written = await session.busy(async app => {
        const done = await app.fileKart(text, { by: who });
        if (done.kind === 'recorded') keepText(keep, kart.name, undefined); // nothing is half done any more
        return done;
      });
      if (written.kind === 'refused') return setRefused(written.problems);
      put(filed.text);
      setDone(written.facts[0]?.id);
    } catch (error) {
      setRefused(session.ask.problems(error));
    }
  };
  const undo = async (): Promise<void> => {
    if (done === undefined) return;
    const written = await session.write([{ kind: 'struck', fact: done, why: kartFileWords.undone }]);
    if (written.kind === 'refused') setRefused(written.problems);
    else setDone(undefined);
  };
  return {
    filed,
    text,
    put,
    leave: () => put(filed.text),
    overtaken: working !== undefined && working.from !== filed.fact && working.text !== filed.text,
    told: told?.of === text ? told.told : undefined,
    last,
    file,
    refused,
    done,
    undo,
  };
}
