/**
 * Figures of the running server for whoever watches it. Source of the format: Prometheus documentation, "Exposition formats",
 * text format version 0.0.4: HELP, TYPE, one sample a line, histograms with cumulative buckets, sum and count.
 */
export const METRICS_TYPE = 'text/plain; version=0.0.4; charset=utf-8';

/** Seconds; what a person does not notice, up to what a person takes for broken. */
const BUCKETS = [0.005, 0.025, 0.1, 0.25, 1, 2.5, 10] as const;
type Labels = Readonly<Record<string, string>>;
type Histogram = { readonly labels: Labels; readonly counts: number[]; sum: number; count: number };

export class Metrics {
  readonly #requests = new Map<string, { readonly labels: Labels; value: number }>();
  readonly #seconds = new Map<string, Histogram>();
  readonly #gauges: { readonly name: string; readonly help: string; readonly value: () => number }[] = [];

  /** Read when asked for. */
  gauge(name: string, help: string, value: () => number): void {
    this.#gauges.push({ name, help, value });
  }

  /** One answered request. `route` must be one of few: a pattern, never an address as it was asked for. */
  answered(method: string, route: string, status: number, seconds: number): void {
    const labels = { method, route, status: String(status) };
    const key = JSON.stringify(labels);
    const counter = this.#requests.get(key) ?? { labels, value: 0 };
    counter.value++;
    this.#requests.set(key, counter);
    const own = this.#seconds.get(route) ?? { labels: { route }, counts: BUCKETS.map(() => 0), sum: 0, count: 0 };
    BUCKETS.forEach((most, n) => {
      if (seconds <= most) own.counts[n] = (own.counts[n] ?? 0) + 1;
    });
    own.sum += seconds;
    own.count++;
    this.#seconds.set(route, own);
  }

  text(): string {
    const lines: string[] = [];
    const head = (name: string, type: string, help: string): void => {
      lines.push(`# HELP ${name} ${help.replaceAll('\\', '\\\\').replaceAll('\n', '\\n')}`, `# TYPE ${name} ${type}`);
    };
    const sample = (name: string, labels: Labels, value: number): void => {
      lines.push(`${name}${labelled(labels)} ${shown(value)}`);
    };
    head('kartwright_requests_total', 'counter', 'Requests answered.');
    for (const { labels, value } of this.#requests.values()) sample('kartwright_requests_total', labels, value);
    head('kartwright_request_seconds', 'histogram', 'How long answers took, by route.');
    for (const { labels, counts, sum, count } of this.#seconds.values()) {
      BUCKETS.forEach((most, n) => {
        sample('kartwright_request_seconds_bucket', { ...labels, le: String(most) }, counts[n] ?? 0);
      });
      sample('kartwright_request_seconds_bucket', { ...labels, le: '+Inf' }, count);
      sample('kartwright_request_seconds_sum', labels, sum);
      sample('kartwright_request_seconds_count', labels, count);
    }
    for (const { name, help, value } of this.#gauges) {
      head(name, 'gauge', help);
      sample(name, {}, value());
    }
    return `${lines.join('\n')}\n`;
  }
}

function labelled(labels: Labels): string {
  const pairs = Object.entries(labels).map(
    ([name, value]) => `${name}="${value.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n')}"`,
  );
  return pairs.length === 0 ? '' : `{${pairs.join(',')}}`;
}

const shown = (value: number): string =>
  value === Number.POSITIVE_INFINITY ? '+Inf' : value === Number.NEGATIVE_INFINITY ? '-Inf' : String(value);
