/** What an hour and an event of running costs in parts, from lives and prices; reckoned when somebody looks. */
import { useMemo, useState } from 'preact/hooks';
import { type LifeAsk, type LifeSheet, lifeSheet, type SparesBox } from '../../life/index.ts';
import { useLives } from '../lives/asked.ts';
import { round } from '../lives/paper.tsx';
import type { Session, Snapshot } from '../session.ts';
import { capital } from '../words/reads.ts';
import { sparesWords } from '../words/spares.tsx';

type Props = { readonly snapshot: Snapshot; readonly session: Session; readonly box: SparesBox };

export function RunningCosts(props: Props) {
  const [open, setOpen] = useState(false);
  const { ask } = useLives(props.session, props.snapshot);
  return (
    <details class={open ? 'group' : 'group no-print'} onToggle={e => setOpen(e.currentTarget.open)}>
      <summary>
        <h2>{sparesWords.whatRunningCosts}</h2>
      </summary>
      {open && ask && <Table {...props} ask={ask} />}
    </details>
  );
}

type Row = { readonly name: string; readonly cost: NonNullable<LifeSheet['cost']> };

function Table({ snapshot: { kart }, box, ask }: Props & { readonly ask: LifeAsk }) {
  const rows = useMemo(
    () =>
      box.piles
        .flatMap(({ parts }) => parts)
        .flatMap((id): Row[] => {
          const part = kart.parts[id];
          const cost =
            part && kart.costs?.spares[part.kind]?.price !== undefined ? lifeSheet(kart, part, ask).cost : null;
          return cost ? [{ name: id, cost }] : [];
        })
        .sort((a, b) => b.cost.perHour.mean - a.cost.perHour.mean),
    [kart, box, ask],
  );
  if (rows.length === 0) return <p class="note">{sparesWords.noPartHasPriceLife}</p>;
  const all = (of: 'perHour' | 'perEvent'): number => rows.reduce((sum, { cost }) => sum + (cost[of]?.mean ?? 0), 0);
  return (
    <>
      <p class="soft">{sparesWords.eachPartReplaced}</p>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">{sparesWords.part}</th>
            <th scope="col">{sparesWords.anHour}</th>
            <th scope="col">{sparesWords.anEvent}</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{sparesWords.allOfThese}</th>
            <td>{round(all('perHour'))}</td>
            <td>{round(all('perEvent'))}</td>
          </tr>
          {rows.map(({ name, cost }) => (
            <tr key={name}>
              <th scope="row">{capital(name)}</th>
              <td>{span(cost.perHour)}</td>
              <td>{cost.perEvent ? span(cost.perEvent) : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const span = ({ mean, low, high }: Row['cost']['perHour']): string =>
  `${round(mean)}, between ${round(low)} and ${round(high)}`;
