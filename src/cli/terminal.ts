/** Who sits at the terminal: a question put, and what was piped in. */

/** What was typed in answer. The end of input is the end of the talk: nothing is recorded. */
export async function asked(question: string): Promise<string> {
  const { createInterface } = await import('node:readline/promises');
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const ended = new Promise<never>((_, reject) =>
    lines.once('close', () => reject(new Error('Expected an answer, got the end of input; nothing was recorded'))),
  );
  try {
    return await Promise.race([lines.question(question), ended]);
  } finally {
    ended.catch(() => undefined);
    lines.close();
  }
}

/** All of it, once it has ended. */
export async function textOf(stream: AsyncIterable<Uint8Array | string>): Promise<string> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of stream) chunks.push(typeof chunk === 'string' ? Buffer.from(chunk) : chunk);
  return Buffer.concat(chunks).toString('utf8');
}
