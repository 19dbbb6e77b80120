import { readFile } from 'node:fs/promises';
import { DomainError } from '@archwright/kernel';
import { callersPath } from './arguments.js';

/** A file named on the command line cannot be read. */
export class InputFileError extends DomainError {
  constructor(path: string, problem: string) {
    super('cli.input-file', `${path}: ${problem}`, { path });
  }
}

/** @throws {InputFileError} saying why the file cannot be read */
export async function readInput(path: string): Promise<Uint8Array> {
  try {
    return await readFile(callersPath(path));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') throw new InputFileError(path, 'there is no such file.');
    if (code === 'EISDIR') throw new InputFileError(path, 'this is a folder. Accepted: a file.');
    if (code === 'EACCES') throw new InputFileError(path, 'you may not read this file.');
    throw error;
  }
}
