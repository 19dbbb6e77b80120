/** Prints the story: one plain sentence a step, a small table where figures belong together. */
export class Narrator {
  private scenes = 0;

  constructor(private readonly write: (line: string) => void) {}

  scene(title: string): void {
    this.scenes += 1;
    this.write('');
    this.write(`${String(this.scenes)}. ${title}`);
  }

  say(sentence: string): void {
    this.write(`   ${sentence}`);
  }

  table(head: readonly string[], rows: readonly (readonly string[])[]): void {
    const widths = head.map((cell, column) => Math.max(cell.length, ...rows.map((row) => (row[column] ?? '').length)));
    const line = (cells: readonly string[]) =>
      `   ${cells
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd()}`;
    this.write(line(head));
    this.write(line(widths.map((width) => '-'.repeat(width))));
    for (const row of rows) this.write(line(row));
  }
}

/** Weekday, day, month and time in the clinic's zone, such as `Tue 22 December, 09:20`. */
export function whenInWords(instant: string, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    weekday: 'short',
    day: 'numeric',
    month: 'long',
    hour: '2-digit',
    minute: '2-digit',
  }).format(new Date(instant));
}

export function dateInWords(date: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    weekday: 'short',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  }).format(new Date(`${date}T00:00:00Z`));
}
