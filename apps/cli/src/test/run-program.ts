import { spawn, type ChildProcess } from 'node:child_process';

const running = new Set<ChildProcess>();

export interface ProgramResult {
  readonly code: number;
  /** What it said, unless that went straight to the terminal. */
  readonly output: string;
}

/** Runs a program to its end; with `isShown` its words go to the terminal as they come, else they are kept. */
export function runProgram(
  command: string,
  args: readonly string[],
  { isShown, env = {} }: { isShown: boolean; env?: Readonly<Record<string, string>> },
): Promise<ProgramResult> {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      stdio: ['ignore', isShown ? 2 : 'pipe', isShown ? 2 : 'pipe'],
      env: { ...process.env, ...env },
    });
    running.add(child);
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream?.setEncoding('utf8').on('data', (text: string) => (output += text));
    child.once('error', (error) => {
      running.delete(child);
      resolve({ code: 127, output: error.message });
    });
    child.once('close', (code) => {
      running.delete(child);
      resolve({ code: code ?? 1, output });
    });
  });
}

/** For a test run that is broken off. */
export function stopPrograms(): void {
  for (const child of running) child.kill('SIGTERM');
}
