/** The pattern of an address, for figures and logs: few, and without the name of a kart or a hash in it. */
const KNOWN = new Set(
  'api karts facts due fitness plan replan setup calendar track weak-links alike life spares second-retention release laps sheet season predict compare helped files book ends since take export live kart-file library pair me devices forget healthz readyz metrics authority.pem'.split(
    ' ',
  ),
);

export function routeOf(path: string, status: number): string {
  if ([401, 403, 404, 405, 421, 429].includes(status)) return 'refused';
  const [, first = '', ...rest] = path.split('/');
  if (first !== 'api') return KNOWN.has(first) && rest.length === 0 ? `/${first}` : 'page';
  return `/api/${rest.map((one, n) => (KNOWN.has(one) && !(n === 1 && rest[0] !== 'book' && rest[0] !== 'devices') ? one : ':name')).join('/')}`;
}
