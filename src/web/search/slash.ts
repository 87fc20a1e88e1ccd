/** A slash leads to the search from anywhere but a field, where it belongs to what is typed. */
export const onSlash =
  (go: () => void) =>
  (event: KeyboardEvent): void => {
    if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.target instanceof Element && event.target.closest('input, textarea, select, dialog')) return;
    event.preventDefault(); // else the slash itself would be typed into the field it leads to
    go();
  };
