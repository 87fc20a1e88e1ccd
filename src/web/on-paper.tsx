/** What only paper shows: drawn as somebody prints, so that the screen does not wait for hundreds of its rows. */
import { type ComponentChildren, render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export function OnPaper({ children }: { readonly children: ComponentChildren }) {
  const paper = useRef<HTMLDivElement>(null);
  const latest = useRef(children);
  latest.current = children;
  useEffect(() => {
    const printing = matchMedia('print');
    const put = (what: ComponentChildren): void => {
      if (paper.current) render(what, paper.current); // at once: who prints waits for nothing that comes later
    };
    const draw = (): void => put(latest.current);
    const change = (): void => put(printing.matches ? latest.current : null);
    change();
    window.addEventListener('beforeprint', draw);
    window.addEventListener('afterprint', change);
    printing.addEventListener('change', change);
    return () => {
      window.removeEventListener('beforeprint', draw);
      window.removeEventListener('afterprint', change);
      printing.removeEventListener('change', change);
    };
  }, []);
  return <div ref={paper} />;
}
