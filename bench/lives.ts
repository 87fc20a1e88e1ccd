/**
 * Lives: the most likely one with covariance and log-likelihood beside survreg of R, and the weighing of record and guess.
 * Both in this run, warm, in processor time, on the same invented records: shape 2, scale 100, about half still running.
 * The digits must agree.
 */
import { spawnSync } from 'node:child_process';
import { chanceOver, type Life, posteriorOf, type WeibullFit, weibullFit } from '../src/life/index.ts';
import { type Figure, times } from './measure.ts';
import { type Random, seeded } from './random.ts';

const SIZES = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];
/** survreg stops where the log-likelihood no longer moves; asked to the last bits it agrees to these. */
const SAME_DIGITS = 1e-8;

export async function lives(): Promise<readonly Figure[]> {
  const random = seeded(6);
  const records = SIZES.map(n => invented(n, random));
  const theirs = survreg(records);
  const figures = records.map((record, n): Figure => {
    const ours = timed(() => weibullFit(record));
    const other = theirs?.[n];
    if (other) mustAgree(record, other);
    const failed = record.filter(({ fate }) => fate === 'failed').length;
    return {
      what: `most likely life of ${record.length}, ${failed} failed`,
      value: `${(1000 * ours).toFixed(ours < 0.1 ? 1 : 0)} µs`,
      ...(other && {
        ratio: `${times(other.ms, ours, 'as fast as survreg')}, ${other.ms.toFixed(2)} ms; the bare root in R ${times(other.rootMs, ours, 'ours')}`,
      }),
    };
  });
  return [
    ...figures,
    ...(theirs ? [] : [{ what: 'R with its package survival is not installed: nothing to compare with', value: '' }]),
    ...weighing(invented(50, random)),
  ];
}

function weighing(record: readonly Life[]): readonly Figure[] {
  const prior = { shape: { median: 2, spread: 0.35 }, scale: { median: 60, spread: 0.7 }, source: 'the bench' };
  const weigh = () => posteriorOf(prior, record);
  const posterior = weigh();
  if (posterior.kind === 'unknown') throw new Error(`bench: a posterior must come out, got ${posterior.why}`);
  const both = (): unknown => {
    const again = weigh();
    return again.kind === 'posterior' && chanceOver(again, { age: 20, hours: 3 });
  };
  const shown = (ms: number): string => `${ms.toFixed(1)} ms`;
  return [
    { what: 'posterior of 50 lives', value: shown(timed(weigh)) },
    { what: 'posterior of 50 lives, chance over an event and its band', value: shown(timed(both)) },
  ];
}

function invented(n: number, random: Random): readonly Life[] {
  const uniform = (): number => (random.below(1e9) + 0.5) / 1e9;
  return Array.from({ length: n }, (): Life => {
    const life = 100 * Math.sqrt(-Math.log(uniform()));
    const watched = 200 * uniform();
    return { fate: life <= watched ? 'failed' : 'running', age: Math.min(life, watched) };
  });
}

/** Processor time of one piece of work, ms, the middle of several: what others do on the machine meanwhile does not count. */
function timed(work: () => unknown): number {
  let repeats = 1;
  const once = (): number => {
    const from = process.cpuUsage();
    for (let n = 0; n < repeats; n++) work();
    const { user, system } = process.cpuUsage(from);
    return (user + system) / 1000 / repeats;
  };
  while (once() * repeats < 20) repeats *= 2;
  const all = Array.from({ length: 11 }, once).sort((a, b) => a - b);
  return all[5] ?? Number.NaN;
}

/** Not a dependency: compared with where it is installed. */
const R = 'Rscript';

type Theirs = {
  readonly ms: number;
  readonly rootMs: number;
  readonly numbers: readonly number[]; // shape, scale, log-likelihood, covariance
};

/** One line a record: processor times of survreg and of the bare root, and what survreg finds when asked to the last bits. */
const SCRIPT = `
suppressMessages(library(survival))
for (line in readLines(file("stdin"))) {
  v <- as.numeric(strsplit(line, " ")[[1]]); k <- length(v) / 2; t <- v[1:k]; d <- v[(k + 1):(2 * k)]
  cpu <- function() sum(proc.time()[1:2])
  once <- function(f, k) { a <- cpu(); for (j in 1:k) f(); (cpu() - a) * 1000 / k }
  mid <- function(f) { k <- 1; while (once(f, k) * k < 100) k <- 2 * k; median(sapply(1:7, function(i) once(f, k))) }
  root <- function() { lx <- log(t / max(t)); m <- mean(lx[d == 1])
    b <- uniroot(function(b) { w <- exp(b * lx); sum(w * lx) / sum(w) - 1 / b - m }, c(0.05, 50), tol = 1e-10)$root
    max(t) * (sum((t / max(t))^b) / sum(d))^(1 / b) }
  f <- survreg(Surv(t, d) ~ 1, control = list(rel.tolerance = 1e-13, maxiter = 100))
  cat(sprintf("%.17g", c(mid(function() survreg(Surv(t, d) ~ 1)), mid(root), 1 / f$scale, exp(coef(f)), f$loglik[2],
    f$var[1, 1], f$var[1, 2], f$var[2, 2])), "\\n")
}`;

function survreg(records: readonly (readonly Life[])[]): readonly Theirs[] | undefined {
  const input = records
    .map(record =>
      [...record.map(({ age }) => age), ...record.map(({ fate }) => (fate === 'failed' ? 1 : 0))].join(' '),
    )
    .join('\n');
  const { status, stdout } = spawnSync(R, ['-e', SCRIPT], { input: `${input}\n`, encoding: 'utf8' });
  if (status !== 0) return undefined;
  return stdout
    .trim()
    .split('\n')
    .map(line => {
      const [ms = Number.NaN, rootMs = Number.NaN, ...numbers] = line.trim().split(/\s+/).map(Number);
      return { ms, rootMs, numbers };
    });
}

function mustAgree(record: readonly Life[], { numbers }: Theirs): void {
  const fit = weibullFit(record) as WeibullFit;
  const { scale, both, shape } = fit.covariance;
  [fit.shape, fit.scale, fit.logLikelihood, scale, both, shape].forEach((ours, n) => {
    const other = numbers[n] ?? Number.NaN;
    // The shared covariance may be near nothing: it is held against the others.
    const size = n === 4 ? Math.sqrt(scale * shape) : Math.abs(other);
    if (!(Math.abs(ours - other) <= SAME_DIGITS * size))
      throw new Error(
        `bench: number ${n} of the fit of ${record.length} must be that of survreg, ${other}, got ${ours}`,
      );
  });
}
