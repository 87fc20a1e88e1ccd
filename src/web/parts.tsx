/** Small pieces every sheet uses. */
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { FitAnswer, Problem } from '../app/index.ts';
import { dateOf, timeOf } from './choice/dates.ts';
import { Glyph } from './glyph.tsx';
import { pageWords } from './words/page.ts';

/** Refusals, read out when they appear: what was expected, what came, what to do. */
export function Refused({
  problems,
  children,
}: {
  readonly problems: readonly Problem[];
  readonly children?: ComponentChildren;
}) {
  if (problems.length === 0) return null;
  return (
    <div class="refused" role="alert">
      {problems.map(p => (
        <p key={`${p.code}${p.where}${p.message}`}>
          <b>{p.message}</b> {p.remedy}
        </p>
      ))}
      {children}
    </div>
  );
}

export function Caution({ text }: { readonly text: string | null }) {
  if (text === null) return null;
  return (
    <div class="caution" role="note">
      <Glyph sign="caution" />
      <p>
        <b>{pageWords.caution}</b> {text}
      </p>
    </div>
  );
}

export function Verdict({ fitness }: { readonly fitness: FitAnswer }) {
  const { verdict, against, unknown } = fitness;
  const count = [
    against.length > 0 ? pageWords.countAgainst(against.length) : '',
    unknown.length > 0 ? pageWords.countNotKnown(unknown.length) : '',
    fitness.open.length > 0 ? pageWords.belowSafety(fitness.open.length) : '',
  ].filter(Boolean);
  return (
    <div class="verdict">
      <Glyph sign={verdict} />
      <div>
        <strong>
          {verdict === 'fit' ? pageWords.fit : verdict === 'not fit' ? pageWords.notFit : pageWords.verdictNotKnown}
        </strong>
        <p class="soft">
          {pageWords.verdicts[verdict]} {count.join(' · ')}
        </p>
      </div>
    </div>
  );
}

export function Cell({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    <div class="cell">
      <small>{label}</small>
      {children}
    </div>
  );
}

/** What every printed page of a sheet carries at its head, the second and later ones too. */
export function useSheetName(title: string, kart: string, invented: boolean): void {
  useEffect(() => {
    const name = pageWords.sheetName(title, kart, invented);
    const { style } = document.documentElement;
    style.setProperty('--sheet-name', JSON.stringify(name));
    return () => void style.removeProperty('--sheet-name');
  }, [title, kart, invented]);
}

/** The title block of a printed sheet. */
export function PrintTitle(props: {
  readonly title: string;
  readonly kart: string;
  readonly event: string | null;
  readonly invented: boolean;
}) {
  useSheetName(props.title, props.kart, props.invented);
  const now = new Date().toISOString();
  return (
    <div class="print-title only-print-grid">
      <div>
        <small>{props.title}</small>
        <b>{props.event ?? pageWords.noEventPlanned}</b>
      </div>
      <div>
        <small>{pageWords.kart}</small>
        <b>{props.kart}</b>
        {props.invented ? pageWords.inventedAside : ''}
      </div>
      <div>
        <small>{pageWords.printed}</small>
        <b>{pageWords.dayAndTime(dateOf(now), timeOf(now))}</b>
      </div>
      <div>
        <small>{pageWords.drawnUp}</small>
        <b>{pageWords.kartwright}</b>
      </div>
    </div>
  );
}

/** Room on paper for whoever stands for a sheet. */
export function PrintSign({ who }: { readonly who: string }) {
  return (
    <div class="only-print">
      <div class="signature end">
        <div>{who}</div>
        <div>{pageWords.dateAndTime}</div>
      </div>
    </div>
  );
}
