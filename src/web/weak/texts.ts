/** Starting guesses, retentions and the scheme of severities, as shipped beside the page. */
import type { RiskTexts } from '../../app/index.ts';
import { type RiskScheme, readRiskScheme } from '../../risk/index.ts';

const RETENTIONS = new URL('../../../data/retentions.yaml', import.meta.url);
const PRIORS = new URL('../../../data/priors.yaml', import.meta.url);
const SEVERITY = new URL('../../../data/severity.yaml', import.meta.url);

export type Shipped = RiskTexts & { readonly scheme: RiskScheme };

let shipped: Promise<Shipped> | undefined;

/** Fetched once; what failed is fetched again when it is next asked for. */
export function fetchShipped(): Promise<Shipped> {
  shipped ??= all().catch((error: unknown) => {
    shipped = undefined;
    throw error;
  });
  return shipped;
}

async function all(): Promise<Shipped> {
  const [retentions, priors, severity] = await Promise.all([text(RETENTIONS), text(PRIORS), text(SEVERITY)]);
  return { retentions, priors, scheme: readRiskScheme(severity) };
}

async function text(file: URL): Promise<string> {
  const response = await fetch(file);
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return response.text();
}
