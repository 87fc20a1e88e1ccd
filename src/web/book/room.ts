/** Whether the browser will keep the book of this device, and how much room it takes. */
export type Room = {
  /** Undefined where the browser does not say: it may clear the book when room is short. */
  readonly persisted: boolean | undefined;
  readonly bytes: number | undefined;
};

/** Asks the browser to keep it; some ask the person in turn. It answers by itself and needs no waiting for. */
export async function askToKeep(storage: StorageManager | undefined): Promise<Room> {
  const persisted = await storage?.persist?.().catch(() => undefined);
  return { persisted, bytes: (await storage?.estimate?.().catch(() => undefined))?.usage };
}

export async function roomNow(storage: StorageManager | undefined): Promise<Room> {
  const persisted = await storage?.persisted?.().catch(() => undefined);
  return { persisted, bytes: (await storage?.estimate?.().catch(() => undefined))?.usage };
}
