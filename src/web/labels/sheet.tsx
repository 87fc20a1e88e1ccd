/** Labels for parts and boxes of spares, to print and cut: a code that opens what is known of the part. */
import './labels.css';
import { useEffect, useState } from 'preact/hooks';
import { boxesOf, type Label, labelsFor, type QrCode, qrCodes, Refusal } from '../../app/index.ts';
import { SYSTEMS, type System } from '../../kart/index.ts';
import { PrintTitle, Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { labelsWords } from '../words/labels.ts';
import { capital } from '../words/reads.ts';

export type LabelsProps = { readonly snapshot: Snapshot; readonly keep: Keep };

const BASE = 'labels address';
const ONLY = 'labels of';

export function Labels({ snapshot, keep }: LabelsProps) {
  const { kart, due } = snapshot;
  const [draw, setDraw] = useState<(text: string) => QrCode>();
  useEffect(() => void qrCodes().then(codes => setDraw(() => codes)), []);
  const [base, setBase] = useState(keep.get(BASE) || `${location.origin}${location.pathname}`);
  const [only, setOnly] = useState(keep.get(ONLY));
  const { labels, problems } = asked(kart, base, only);
  return (
    <>
      <PrintTitle title={labelsWords.labels} kart={kart.name} event={due.event} invented={kart.invented} />
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'kart' })}>
          {labelsWords.kartFromAbove}
        </a>
      </p>
      <h1 class="no-print">{labelsWords.labelsWithCode}</h1>
      <div class="no-print">
        <label for="labels-of">{labelsWords.labelsFor}</label>
        <select
          id="labels-of"
          class="field"
          value={only}
          onChange={e => {
            keep.set(ONLY, e.currentTarget.value);
            setOnly(e.currentTarget.value);
          }}
        >
          <option value="">{labelsWords.everyPartAndEveryBox}</option>
          {boxesOf(kart).length > 0 && <option value="boxes">{labelsWords.boxesOfSpares}</option>}
          {SYSTEMS.filter(system => Object.values(kart.parts).some(part => part.system === system)).map(system => (
            <option key={system} value={system}>
              {system}
            </option>
          ))}
        </select>
        <label for="labels-at">{labelsWords.addressThatCodeOpens}</label>
        <input
          id="labels-at"
          inputMode="url"
          autocomplete="off"
          value={base}
          aria-describedby="labels-hint"
          onInput={e => {
            keep.set(BASE, e.currentTarget.value);
            setBase(e.currentTarget.value);
          }}
        />
        <p class="soft" id="labels-hint">
          {labelsWords.asPhoneThatScans(isHere(base) ? labelsWords.thisAddress : '')}
        </p>
        <Refused problems={problems} />
        <div class="answers below">
          <button
            type="button"
            class="button main big full"
            disabled={labels.length === 0 || draw === undefined}
            onClick={() => window.print()}
          >
            {labelsWords.printLabels(labels.length)}
          </button>
        </div>
      </div>
      {draw !== undefined && (
        <ul class="labels">
          {labels.map(label => (
            <OneLabel key={`${label.what}${label.name}`} label={label} code={draw(label.url)} />
          ))}
        </ul>
      )}
    </>
  );
}

function OneLabel({ label, code }: { readonly label: Label; readonly code: QrCode }) {
  return (
    <li>
      <svg viewBox={`0 0 ${code.size} ${code.size}`} role="img" aria-label={labelsWords.code(label.name)}>
        <path d={code.path} />
      </svg>
      <div>
        <small>{label.what === 'box' ? labelsWords.sparesKart(label.kart) : labelsWords.kart(label.kart)}</small>
        <b>{capital(label.name)}</b>
        <small>{label.under}</small>
      </div>
    </li>
  );
}

function asked(kart: Snapshot['kart'], base: string, only: string) {
  try {
    const labels = labelsFor(kart, { base, ...(only === '' ? {} : { only: only as System | 'boxes' }) });
    return { labels, problems: [] };
  } catch (error) {
    if (error instanceof Refusal) return { labels: [], problems: error.problems };
    throw error;
  }
}

const isHere = (base: string): boolean => /^https?:\/\/(localhost|127\.|\[::1\])/.test(base);
