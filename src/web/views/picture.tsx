import { render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { PictureProps } from '../plan/picture.tsx';
import { fetched } from './fetched.tsx';

const load = () => import('../plan/picture.tsx');

export const Picture = fetched<PictureProps>('plan', 'picture of the plan', async () => (await load()).Picture);

/** Hundreds of rows that are drawn only as somebody prints, so that each new plan on the screen does not wait for them. */
export function PrintByPerson(props: PictureProps) {
  const paper = useRef<HTMLDivElement>(null);
  const latest = useRef(props);
  latest.current = props;
  useEffect(() => {
    let draw = (): void => undefined;
    void load().then(
      ({ PrintByPerson: Sheets }) => {
        draw = () => paper.current && render(<Sheets {...latest.current} />, paper.current);
        addEventListener('beforeprint', draw);
      },
      () => undefined, // the picture on the screen says what to do
    );
    return () => removeEventListener('beforeprint', draw);
  }, []);
  return <div class="only-print" ref={paper} />;
}
