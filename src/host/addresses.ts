/** Under which names and addresses this machine is reached on the local network. */
import { hostname, networkInterfaces } from 'node:os';

/** IPv4 first, since a person may have to type it; then the name, alone and as the network itself resolves it (RFC 6762). */
export function localAddresses(): readonly string[] {
  const found = Object.values(networkInterfaces())
    .flatMap(list => list ?? [])
    .filter(({ internal }) => !internal);
  const v4 = found.filter(({ family }) => family === 'IPv4').map(({ address }) => address);
  const v6 = found
    .filter(({ family, scopeid }) => family === 'IPv6' && !scopeid) // a link-local address needs a zone, which no browser takes
    .map(({ address }) => `[${address}]`);
  const name = hostname().toLowerCase();
  const names = /^[a-z0-9-]+$/.test(name) ? [`${name}.local`, name] : [];
  return [...v4, ...names, ...v6];
}
