import type { Page } from 'playwright-core';

interface ExpectedRefusal {
  readonly status: number;
  readonly path: RegExp;
}

/** The page asks at its start who is signed in; nobody is a proper answer. */
const NOBODY_SIGNED_IN: ExpectedRefusal = { status: 401, path: /^\/api\/v1\/sessions\/current$/ };
/** The browser's own line on an answer that is no success; the answer itself is judged below. */
const FAILED_ANSWER = /^Failed to load resource: the server responded with a status of/;

/** Runs in the page: says so when what has the focus goes and nothing takes it on. Nothing of it is the product's. */
const WATCH_FOCUS = `{
  let last = null;
  document.addEventListener('focusin', ({ target }) => { last = target; });
  document.addEventListener('mousedown', () => setTimeout(() => {
    if (document.activeElement === document.body) last = null;
  }));
  const isLost = () => document.activeElement === document.body && last !== null &&
    !(last.isConnected && last.checkVisibility() && !last.matches(':disabled'));
  setInterval(() => {
    const lost = last;
    if (!isLost()) return;
    setTimeout(() => {
      if (lost !== last || !isLost()) return;
      console.error('The focus was lost with ' + last.outerHTML.slice(0, 200));
      last = null;
    }, 1000);
  }, 100);
}`;

/**
 * Collects errors of the console (among them every breach of the content security policy), of scripts, answers of the
 * service that are no success, and whatever takes the focus away with it.
 */
export class Complaints {
  private readonly found: string[] = [];
  private readonly expected: ExpectedRefusal[] = [NOBODY_SIGNED_IN];

  private constructor(page: Page) {
    page.on('console', (message) => {
      if (message.type() === 'error' && !FAILED_ANSWER.test(message.text()))
        this.found.push(`console: ${message.text()}`);
    });
    page.on('pageerror', (error) => {
      this.found.push(`script: ${error.message}`);
    });
    page.on('response', (response) => {
      const status = response.status();
      const { pathname } = new URL(response.url());
      if (status < 400 || this.expected.some((each) => each.status === status && each.path.test(pathname))) return;
      this.found.push(`${String(status)} ${response.request().method()} ${pathname}`);
    });
  }

  static async of(page: Page): Promise<Complaints> {
    await page.addInitScript({ content: WATCH_FOCUS });
    return new Complaints(page);
  }

  /** From now on, answers with this status at matching paths are part of the test. */
  expect(status: number, path: RegExp): void {
    this.expected.push({ status, path });
  }

  /** What was found since the last call. */
  take(): string[] {
    return this.found.splice(0);
  }
}
