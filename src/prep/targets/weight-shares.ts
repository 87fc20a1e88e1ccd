/** The front share that the scales are read for, and what left and cross share are wanted besides. */
import { dimensionOfSide, type Refine, shown, without } from './model.ts';

export const weightShares: Refine = (own, item, kart) => {
  const wanted = (name: string) => {
    const share = dimensionOfSide(kart, item, name);
    return share?.dimension === 'ratio' && share.si > 0 && share.si < 1 ? share : undefined;
  };
  const front = wanted('front target');
  const besides = (['left', 'cross'] as const).flatMap(name => {
    const share = wanted(`${name} target`);
    return share ? [`${name} share ${share.text}`] : [];
  });
  const figures = front ? { ...own, target: own.target ?? shown(front) } : own;
  const aimed = figures.target ? figures : without(own, ['front target']);
  return besides.length === 0 ? aimed : { ...aimed, say: [...aimed.say, `Wanted besides: ${besides.join(', ')}.`] };
};
