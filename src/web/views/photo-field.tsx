import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import type { Session } from '../session.ts';
import { photoWords } from '../words/photo.ts';
import { Photo } from './photo.tsx';

const TYPES = 'image/jpeg,image/png,image/webp,image/heic,image/gif';

/** A photo straight from the camera, or one that is there; in the book at once, so that a reload does not lose it. */
export function PhotoField(props: {
  readonly id: string;
  readonly hash: string;
  readonly session: Session;
  readonly onPhoto: (hash: string) => void;
  /** One is on its way into the book: what it goes with waits for it, wherever the person is by then. */
  readonly keeping: boolean;
  readonly onKeeping: (is: boolean) => void;
}) {
  const { id, hash, session, keeping, onKeeping } = props;
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const keep = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    onKeeping(true);
    const kept = await session.keepPhoto(file);
    onKeeping(false);
    setProblems(kept.kind === 'kept' ? [] : kept.problems);
    if (kept.kind === 'kept') props.onPhoto(kept.hash);
  };
  return (
    <fieldset class="photo-field">
      <legend>{photoWords.photo}</legend>
      <label class="button">
        {photoWords.takePhoto}
        <input
          type="file"
          accept="image/*"
          capture="environment"
          disabled={keeping}
          onChange={e => void keep(e.currentTarget.files?.[0])}
        />
      </label>
      <label class="button plain">
        {photoWords.choosePhoto}
        <input
          id={id}
          type="file"
          accept={TYPES}
          disabled={keeping}
          onChange={e => void keep(e.currentTarget.files?.[0])}
        />
      </label>
      {keeping && <p role="status">{photoWords.keepingPhoto}</p>}
      <Refused problems={problems} />
      {hash !== '' && (
        <figure>
          <Photo session={session} hash={hash} alt={photoWords.whatGoesWithFind} />
          <button type="button" class="button plain" onClick={() => props.onPhoto('')}>
            {photoWords.leavePhotoOut}
          </button>
        </figure>
      )}
    </fieldset>
  );
}
