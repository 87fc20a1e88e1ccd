/** Runs a script's work; a failure is told in words, without a stack, and the process ends with exit code 1. */
export async function toldAndDone(work) {
  try {
    await work();
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  }
}
