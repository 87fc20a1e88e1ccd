/**
 * Every source a card may name. `seen` says how it was used: `read` in a public copy, `excerpt` as quoted by somebody
 * who is named, `memory` recalled and not verified, `common practice` without a published source.
 */
export type Source = { readonly title: string; readonly seen: 'read' | 'excerpt' | 'memory' | 'common practice' };

export const BIBLIOGRAPHY = {
  'jcgm-100': {
    title:
      'JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in measurement (GUM); 4.3.7 rectangular limits, 5.1.2 combination, G.4.1 Welch-Satterthwaite, H.1 example (components as given in the documentation of the GTC package of the Measurement Standards Laboratory of New Zealand; clauses from memory)',
    seen: 'excerpt',
  },
  'jcgm-106': {
    title:
      'JCGM 106:2012, Evaluation of measurement data: The role of measurement uncertainty in conformity assessment; 7.3, 7.4 (example as quoted at metrologyrules.com, 2022/03), 8 guarded acceptance',
    seen: 'excerpt',
  },
  'ilac-g8': {
    title:
      'ILAC-G8:09/2019, Guidelines on decision rules and statements of conformity (as quoted at tla.sgs.com, Decision Rule)',
    seen: 'excerpt',
  },
  'stack-up': {
    title:
      'Worst case and root-sum-square of a dimensional chain: worked example at metricmech.com, tolerance stack-up',
    seen: 'read',
  },
  'as-26': {
    title:
      'M. Abramowitz, I. A. Stegun (ed.), Handbook of Mathematical Functions, NBS AMS 55, 1964; 26.2.11 series, 26.2.14 continued fraction',
    seen: 'memory',
  },
  'inch-1959': {
    title: 'International yard and pound agreement, 1959: 1 in = 25.4 mm exactly (NIST SP 811, 2008, Appendix B)',
    seen: 'memory',
  },
  'axle-stack': {
    title:
      'Sum of lengths along the rear axle, outer tyre edge to outer tyre edge; 55 in over the tyres for 5 3/4 in from bearing to hub is a garage rule of thumb',
    seen: 'common practice',
  },
  'hub-engagement': {
    title: 'At least 40 mm of axle inside a clamped hub, unless its maker says otherwise',
    seen: 'common practice',
  },
} as const satisfies Readonly<Record<string, Source>>;

export type SourceKey = keyof typeof BIBLIOGRAPHY;
