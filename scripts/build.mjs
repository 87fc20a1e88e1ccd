/** `npm run build`: brings dist/ up to date. */
import { ensureBuilt } from './ensure.mjs';
import { toldAndDone } from './told.mjs';

await toldAndDone(async () => {
  await ensureBuilt();
  console.log('dist/ is built from the sources as they are.');
});
