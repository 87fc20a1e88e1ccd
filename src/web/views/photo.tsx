import { useEffect, useState } from 'preact/hooks';
import type { Session } from '../session.ts';
import { photoWords } from '../words/photo.ts';

/** A photo of the book, large when it is pressed; in words where this device cannot have it. */
export function Photo({
  session,
  hash,
  alt,
}: {
  readonly session: Session;
  readonly hash: string;
  readonly alt: string;
}) {
  const [shown, setShown] = useState<{ readonly url?: string; readonly missing?: true }>({});
  useEffect(() => {
    let url: string | undefined;
    let mine = true;
    session.ask.file(hash).then(
      file => {
        url = file && URL.createObjectURL(file);
        if (mine) setShown(url === undefined ? { missing: true } : { url });
        else if (url !== undefined) URL.revokeObjectURL(url);
      },
      () => mine && setShown({ missing: true }),
    );
    return () => {
      mine = false;
      if (url !== undefined) URL.revokeObjectURL(url);
    };
  }, [session, hash]);
  if (shown.missing) return <p class="soft">{photoWords.photoIsOnServer}</p>;
  if (shown.url === undefined) return null;
  return (
    <a href={shown.url} target="_blank" rel="noreferrer">
      <img class="photo" src={shown.url} alt={alt} />
    </a>
  );
}
