import { jest } from '@jest/globals';

const TURN = '{turns, number} {name}, {direction, select, clockwise {with the clock} other {against it}}';

async function filledIn(language: string): Promise<string> {
  const globals = globalThis as { document?: unknown; localStorage?: unknown; navigator?: unknown };
  globals.document = {};
  globals.localStorage = { getItem: () => language };
  globals.navigator = { languages: [] };
  jest.resetModules();
  try {
    const { filled } = await import('./messages.js');
    return filled(TURN, (turns: number, name: string, direction: string) => ({ turns, name, direction }))(
      2,
      '27-0001',
      'clockwise',
    );
  } finally {
    delete globals.document;
    delete globals.localStorage;
    delete globals.navigator;
  }
}

it('keeps a name apart in a right-to-left text, and leaves the word that a choice goes by as it is', async () => {
  expect(await filledIn('ar')).toBe('2 \u206827-0001\u2069, with the clock');
  expect(await filledIn('en')).toBe('2 27-0001, with the clock');
});
