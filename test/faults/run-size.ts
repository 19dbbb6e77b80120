/** How often a suite does its worst: few times in every run, many when the variable says so. */
export function runSize(variable: string, whenLeftOut: number): number {
  const text = process.env[variable];
  if (text === undefined || text === '') return whenLeftOut;
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new Error(`${variable}="${text}"; give a whole number from 1 to 999999.`);
  return Number(text);
}

/** Every random choice of a run follows from it; another one is another run. */
export const seed = runSize('ARCHWRIGHT_SEED', 20_270);

/** One line of figures about a run, for whoever reads its output. */
export function tell(title: string, figures: Readonly<Record<string, number>>): void {
  const counts = Object.entries(figures).map(([name, count]) => `${name} ${String(count)}`);
  process.stderr.write(`   ${title}: ${counts.join(', ')}\n`);
}
