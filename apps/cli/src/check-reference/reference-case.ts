import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DomainError } from '@archwright/kernel';
import { z } from 'zod';

const referenceCase = z.object({
  id: z.string(),
  method: z.string(),
  input: z.unknown(),
  expected: z.unknown(),
  tolerance: z.union([z.number(), z.object({ relativeOrAbsolute: z.number() }).transform((t) => t.relativeOrAbsolute)]),
});
export type ReferenceCase = z.output<typeof referenceCase>;

const referenceFile = z.union([
  z.array(referenceCase),
  z.object({ cases: z.array(referenceCase) }).transform((file) => file.cases),
]);

/** A file of reference cases cannot be read. */
export class ReferenceFileError extends DomainError {
  constructor(file: string, problem: string) {
    super(
      'cli.reference-file',
      `${file}: ${problem} Accepted: a JSON list of objects with id, method, input, expected and tolerance.`,
      { file },
    );
  }
}

/**
 * All cases of a folder's `*.json` files, in the order of the files' names.
 *
 * @throws {ReferenceFileError} naming the file and what is wrong in it
 */
export async function readReferenceCases(folder: string): Promise<ReferenceCase[]> {
  const names = await readdir(folder).catch(() => {
    throw new ReferenceFileError(folder, 'There is no such folder.');
  });
  const files = names.filter((name) => name.endsWith('.json')).sort();
  if (files.length === 0) throw new ReferenceFileError(folder, 'No *.json file is in it.');
  const lists = await Promise.all(
    files.map(async (name) => {
      const text = await readFile(join(folder, name), 'utf8');
      let content: unknown;
      try {
        content = JSON.parse(text);
      } catch (error) {
        throw new ReferenceFileError(
          name,
          `It is no JSON (${error instanceof Error ? error.message : String(error)}).`,
        );
      }
      const parsed = referenceFile.safeParse(content);
      if (!parsed.success) throw new ReferenceFileError(name, z.prettifyError(parsed.error));
      return parsed.data;
    }),
  );
  return lists.flat();
}
