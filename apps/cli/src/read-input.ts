import { readFile, writeFile } from 'node:fs/promises';
import { DomainError } from '@archwright/kernel';
import { callersPath } from './arguments.js';

/** A file named on the command line cannot be read or written. */
class NamedFileError extends DomainError {
  constructor(path: string, problem: string) {
    super('cli.named-file', `${path}: ${problem}`, { path });
  }
}

/** @throws {NamedFileError} saying why the file cannot be read */
export async function readInput(path: string): Promise<Uint8Array> {
  try {
    return await readFile(callersPath(path));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') throw new NamedFileError(path, 'there is no such file.');
    if (code === 'EISDIR') throw new NamedFileError(path, 'this is a folder. Accepted: a file.');
    if (code === 'EACCES') throw new NamedFileError(path, 'you may not read this file.');
    throw error;
  }
}

/** @throws {NamedFileError} saying why the file cannot be written */
export async function writeOutput(path: string, text: string): Promise<void> {
  try {
    await writeFile(callersPath(path), text);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') throw new NamedFileError(path, 'there is no such folder to write into.');
    if (code === 'EISDIR') throw new NamedFileError(path, 'this is a folder. Accepted: the name of a file to write.');
    if (code === 'EACCES' || code === 'EROFS') throw new NamedFileError(path, 'you may not write this file.');
    throw error;
  }
}
