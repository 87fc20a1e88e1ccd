import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import { problemsOf } from '../problems-of.ts';
import { madeFileWords } from '../words/made-file.ts';

/** A file that is made on this device when it is pressed for: of a book of years it has some megabytes. */
export function MadeFile(props: {
  readonly ask: string;
  readonly file: string;
  readonly type: string;
  readonly make: () => Promise<string>;
}) {
  const [url, setUrl] = useState<string>();
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    if (url === undefined) return;
    link.current?.focus(); // the button that was pressed is gone
    return () => URL.revokeObjectURL(url);
  }, [url]);
  const make = async (): Promise<void> => {
    try {
      setUrl(URL.createObjectURL(new Blob([await props.make()], { type: props.type })));
    } catch (error) {
      setRefused(problemsOf(error));
    }
  };
  if (url !== undefined)
    return (
      <a ref={link} class="button full" href={url} download={props.file}>
        {madeFileWords.save}
      </a>
    );
  return (
    <>
      <button type="button" class="button full" onClick={() => void make()}>
        {props.ask}
      </button>
      <Refused problems={refused} />
    </>
  );
}
