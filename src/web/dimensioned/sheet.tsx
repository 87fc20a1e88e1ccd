/** Rear axle or front end as a dimensioned drawing, with the table that says the same. */
import './dimensioned.css';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { own, ownUnitOf } from '../choice/choice.ts';
import { useSheetName } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { dimensionedWords } from '../words/dimensioned.ts';
import { dateOf } from '../words/reads.ts';
import { DrawnSheet } from './drawn.tsx';
import { chosenOf } from './figures.ts';
import { frontEnd } from './front-end.ts';
import { letterOf, type Sheet, WIDTH } from './model.ts';
import { rearAxle } from './rear-axle.ts';
import { DRAWINGS, drawnOn } from './which.ts';

const said = dimensionedWords;

export type DimensionedProps = {
  readonly snapshot: Snapshot;
  /** Which drawing, or the reading of a step whose dimension is wanted. */
  readonly about: string;
};

export function Dimensioned({ snapshot, about }: DimensionedProps) {
  const { kart, state } = snapshot;
  const item = kart.items[about];
  const name = (item && drawnOn(item)) ?? DRAWINGS.find(each => each === about) ?? 'rear axle';
  const sheet = useMemo(() => (name === 'rear axle' ? rearAxle : frontEnd)({ kart, state }), [name, kart, state]);
  const asked = Object.entries(sheet.figures).find(([, figure]) => figure.item === about)?.[0];
  const unknown = Object.values(sheet.figures).filter(({ nominal }) => nominal === null).length;
  const scale = sheet.view.width === WIDTH ? said.atScale : said.notToScale;
  const other = DRAWINGS.find(each => each !== name) ?? name;
  useSheetName(said.titled[name], kart.name, kart.invented);
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    const [out, dimension] = [box.current, box.current?.querySelector('.asked')];
    if (!out || !dimension) return;
    const [a, b] = [out.getBoundingClientRect(), dimension.getBoundingClientRect()];
    out.scrollLeft += b.left + b.width / 2 - a.left - a.width / 2;
  }, [sheet, asked]);
  return (
    <div class="dimensioned-page">
      <p class="no-print">
        <a class="back" href={hashOf(asked === undefined ? { sheet: 'kart' } : { sheet: 'work' })}>
          {asked === undefined ? said.kartFromAbove : said.backToStep}
        </a>
      </p>
      <h1 class="no-print">{said.titled[name]}</h1>
      <p class="soft no-print">{said.drawnAs}</p>
      <div class="answers no-print">
        <a class="button" href={hashOf({ sheet: 'drawing', about: other })}>
          {said.drawingOf[other]}
        </a>
        <button type="button" class="button plain" onClick={() => window.print()}>
          {said.print}
        </button>
      </div>
      <figure class="sheet head-gap">
        {/* Wider than a phone, so that the lettering stays readable: it scrolls, also by the keyboard. */}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys (WCAG 2.1.1) */}
        <section ref={box} class="dimensioned-box" tabIndex={0} aria-label={said.drawing(sheet.title)}>
          <DrawnSheet
            sheet={sheet}
            title={said.everyDimension(sheet.title, kart.name)}
            asked={asked}
            block={{
              title: sheet.title,
              kart: said.kart(kart.name, kart.invented),
              scale,
              record: state.last ? dateOf(state.last.at) : said.nothingYet,
              number: said.numberOf(DRAWINGS.indexOf(name) + 1, DRAWINGS.length),
            }}
          />
        </section>
        <figcaption class="legend">
          <span>{said.inBrackets}</span>
          <span>{said.slanted}</span>
          <span>{said.doubleDotted}</span>
          <span>{unknown === 0 ? said.allGiven : said.notGivenCount(unknown)}</span>
        </figcaption>
      </figure>
      <FigureTable sheet={sheet} asked={asked} />
    </div>
  );
}

function FigureTable({ sheet, asked }: { readonly sheet: Sheet; readonly asked: string | undefined }) {
  return (
    <section class="group" aria-labelledby="figures-of">
      <h2 id="figures-of">
        {said.sameAsTable} <span>{said.inTable(ownUnitOf('mm'))}</span>
      </h2>
      <table class="print figure-table">
        <thead>
          <tr>
            <th scope="col">{said.dimension}</th>
            <th scope="col">{said.shallBe}</th>
            <th scope="col">{said.mayBe}</th>
            <th scope="col">{said.lastInBook}</th>
          </tr>
        </thead>
        <tbody>
          {Object.entries(sheet.figures).map(([key, figure]) => (
            <tr key={key} class={key === asked ? 'asked' : ''}>
              <th scope="row">
                <b>{letterOf(sheet, key)}</b> {figure.name}
                {key === asked && <small> {said.askedByStep}</small>}
              </th>
              <td class="value">
                {chosenOf(figure)}
                {figure.from !== null && said.from[figure.from] !== '' && <small> {said.from[figure.from]}</small>}
              </td>
              <td class="may-be">{(figure.chosen?.tolerance ?? figure.tolerance) || said.none}</td>
              <td class="last-known">
                {figure.last ? (
                  <span>{said.last[figure.last.how](own(figure.last.text))}</span>
                ) : figure.item === null ? (
                  said.none
                ) : (
                  said.notRead
                )}
                {figure.last && (
                  <small>
                    {' '}
                    {dateOf(figure.last.at)}, {figure.last.by}
                  </small>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
