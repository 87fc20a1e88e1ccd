/** Starting guesses, retentions and the scheme of severities, as shipped beside the page. */
import type { RiskTexts } from '../../app/index.ts';

const RETENTIONS = new URL('../../../data/retentions.yaml', import.meta.url);
const PRIORS = new URL('../../../data/priors.yaml', import.meta.url);
const SEVERITY = new URL('../../../data/severity.yaml', import.meta.url);

let shipped: Promise<RiskTexts> | undefined;

/** Fetched once; what failed is fetched again when it is next asked for. */
export function fetchShipped(): Promise<RiskTexts> {
  shipped ??= all().catch((error: unknown) => {
    shipped = undefined;
    throw error;
  });
  return shipped;
}

async function all(): Promise<RiskTexts> {
  const [retentions, priors, severity] = await Promise.all([text(RETENTIONS), text(PRIORS), text(SEVERITY)]);
  return { retentions, priors, severity };
}

async function text(file: URL): Promise<string> {
  const response = await fetch(file);
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return response.text();
}
