/**
 * A certificate for the local network, made by this machine. A phone trusts it once the authority's certificate is installed
 * there by hand, and only then may a page be installed and work without the network.
 */
import { X509Certificate } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';

export type Certificate = {
  readonly key: string;
  readonly cert: string;
  /** Of the authority, PEM: what a phone installs. */
  readonly ca: string;
  /** SHA-256 of it, to compare on the phone. */
  readonly fingerprint: string;
  readonly folder: string;
};

/** Browsers take no leaf for longer than 398 days. Source: CA/Browser Forum, Baseline Requirements 6.3.2. */
const LEAF_DAYS = 365;
const CA_DAYS = 3650;
/** Made anew when it has less than that to live, days. */
const LEFT_DAYS = 30;
const DAY_MS = 86_400_000;

/** The one in `folder`, made when it is missing, about to end, or names other addresses than the machine has now. */
export async function certificateFor(folder: string, names: readonly string[], now: Date): Promise<Certificate> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = (name: string): string => join(folder, name);
  const hosts = [...names.map(one => one.replace(/^\[|\]$/g, '')), 'localhost', '127.0.0.1'];
  if (!['authority.pem', 'authority-key.pem'].every(name => existsSync(path(name)))) await makeAuthority(path);
  const ca = readFileSync(path('authority.pem'), 'utf8');
  if (!fits(path('server.pem'), ca, hosts, now)) await makeLeaf(path, hosts);
  return {
    key: readFileSync(path('server-key.pem'), 'utf8'),
    cert: `${readFileSync(path('server.pem'), 'utf8')}\n${ca}`,
    ca,
    fingerprint: new X509Certificate(ca).fingerprint256,
    folder,
  };
}

async function makeAuthority(path: (name: string) => string): Promise<void> {
  const { createCA } = await import('mkcert');
  const made = await createCA({
    organization: 'Kartwright on this machine',
    countryCode: 'XX',
    state: 'none',
    locality: 'none',
    validity: CA_DAYS,
  });
  secret(path('authority-key.pem'), made.key);
  secret(path('authority.pem'), made.cert);
}

async function makeLeaf(path: (name: string) => string, domains: string[]): Promise<void> {
  const { createCert } = await import('mkcert');
  const made = await createCert({
    ca: { key: readFileSync(path('authority-key.pem'), 'utf8'), cert: readFileSync(path('authority.pem'), 'utf8') },
    domains,
    validity: LEAF_DAYS,
  });
  secret(path('server-key.pem'), made.key);
  secret(path('server.pem'), made.cert);
}

function fits(file: string, ca: string, hosts: readonly string[], now: Date): boolean {
  if (!existsSync(file)) return false;
  const leaf = new X509Certificate(readFileSync(file));
  const named = (host: string): boolean => (isIP(host) === 0 ? leaf.checkHost(host) : leaf.checkIP(host)) !== undefined;
  return (
    leaf.verify(new X509Certificate(ca).publicKey) &&
    Date.parse(leaf.validTo) - now.getTime() > LEFT_DAYS * DAY_MS &&
    hosts.every(named)
  );
}

const secret = (file: string, text: string): void => writeFileSync(file, text, { mode: 0o600 });
