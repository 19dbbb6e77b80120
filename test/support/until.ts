const GIVE_UP_AFTER_MS = 20_000;

/** Waits until `isSo` holds; for effects that another process or worker brings about. */
export async function until(isSo: () => boolean | Promise<boolean>, withinMs = GIVE_UP_AFTER_MS): Promise<void> {
  const endMs = performance.now() + withinMs;
  while (!(await isSo())) {
    if (performance.now() > endMs)
      throw new Error(`It did not happen within ${String(withinMs)} ms: ${isSo.toString()}`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}
