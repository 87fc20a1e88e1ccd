/** Those that are known, so that what is left out is absent. */
export const known = <K extends string>(all: Readonly<Record<K, number | undefined>>): { readonly [N in K]?: number } =>
  Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as { [N in K]?: number };
