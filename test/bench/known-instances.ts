import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A makespan of null: proved to have no plan. */
interface BestKnown {
  readonly makespan: number | null;
  readonly lowerBound: number | null;
}

export interface KnownInstance {
  readonly family: string;
  readonly file: string;
  readonly name: string;
  readonly text: string;
  readonly isProject: boolean;
  readonly best: BestKnown;
}

type Families = Readonly<Record<string, Readonly<Record<string, BestKnown>>>>;

/** Those of a folder that says what is known of them in `best-known.json`. */
export function instancesOf(folder: string): KnownInstance[] {
  const { families } = JSON.parse(readFileSync(join(folder, 'best-known.json'), 'utf8')) as { families: Families };
  return Object.entries(families).flatMap(([family, known]) =>
    readdirSync(join(folder, family))
      .map((file) => ({ file, name: file.replace(/\.[^.]*$/, '') }))
      .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }))
      .flatMap(({ file, name }) => {
        const best = known[name];
        return best === undefined ? [] : [instance(family, file, name, best, join(folder, family, file))];
      }),
  );
}

const OWN_FOLDER = 'test/reference/scheduling';

/** The few that the tests use, all proved. */
export function publishedInstances(): KnownInstance[] {
  const { files } = JSON.parse(readFileSync(join(OWN_FOLDER, 'published.json'), 'utf8')) as {
    files: Record<string, { format: string; optimum: number | null }>;
  };
  return Object.entries(files).map(([file, { format, optimum }]) =>
    instance(
      format,
      file,
      file.replace(/\.[^.]*$/, ''),
      { makespan: optimum, lowerBound: optimum },
      join(OWN_FOLDER, file),
    ),
  );
}

function instance(family: string, file: string, name: string, best: BestKnown, path: string): KnownInstance {
  return { family, file, name, text: readFileSync(path, 'utf8'), isProject: file.endsWith('.sm'), best };
}
