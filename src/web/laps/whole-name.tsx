/** A long name beneath the field it was picked in, which shows its beginning only. The field itself says the whole to who listens. */

/** About as much as the field of a phone shows. */
const SHOWN = 28;

export const WholeName = ({ text }: { readonly text: string }) =>
  text.length > SHOWN ? (
    <p class="soft whole-name" aria-hidden="true">
      {text}
    </p>
  ) : null;
