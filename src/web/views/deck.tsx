/**
 * One card of several is seen. The one that comes next lies beneath it, drawn and laid out already, so that turning to it only has
 * to show it; the one that was turned away leaves once the new one is painted.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { afterPaint, Still } from '../later.tsx';

export type Card = {
  readonly key: string;
  /** It is drawn anew when one of these is another one; whether it is seen is none of them. */
  readonly of: readonly unknown[];
  readonly draw: () => ComponentChildren;
};

export function Deck(props: { readonly seen: Card; readonly beneath: Card | undefined }) {
  const { seen, beneath } = props;
  const cards = useRef<readonly Card[]>([]);
  const [, redraw] = useState(0);
  const wanted = beneath === undefined || beneath.key === seen.key ? [seen] : [seen, beneath];
  const came = wanted.filter(({ key }) => cards.current.every(card => card.key !== key));
  // In the order in which they came: a card that changes its place in the page would be laid out again.
  cards.current = [...cards.current.map(card => wanted.find(({ key }) => key === card.key) ?? card), ...came];
  useEffect(() => {
    if (cards.current.length === wanted.length) return;
    return afterPaint(() => {
      cards.current = cards.current.filter(card => wanted.includes(card));
      redraw(n => n + 1);
    });
  });
  return (
    <>
      {cards.current.map(card => (
        <Placed
          key={card.key}
          card={card}
          place={card === seen ? 'seen' : wanted.includes(card) ? 'beneath' : 'left'}
        />
      ))}
    </>
  );
}

function Placed({ card, place }: { readonly card: Card; readonly place: 'seen' | 'beneath' | 'left' }) {
  const at = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (place !== 'beneath') return;
    lay(at.current);
    return afterPaint(() => lay(at.current)); // with what of it is drawn later
  }, [place, ...card.of]);
  return (
    <div ref={at} class={place === 'seen' ? 'card' : place === 'beneath' ? 'card beneath' : 'card beneath kept'}>
      <Still of={card.of}>{card.draw()}</Still>
    </div>
  );
}

/** Laid out and then kept as it is, in one go: nothing beneath is ever painted, read out or reached by a key. */
function lay(card: HTMLElement | null): void {
  if (card === null) return;
  card.classList.remove('kept');
  void card.offsetHeight;
  card.classList.add('kept');
}
