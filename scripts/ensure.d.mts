/** Installs the packages of the lock file unless they are there. */
export function ensureInstalled(): Promise<void>;
/** Builds dist/ unless it was built from these very sources. */
export function ensureBuilt(): Promise<void>;
