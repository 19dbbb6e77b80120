import type { Page } from 'playwright-core';

interface ExpectedRefusal {
  readonly status: number;
  readonly path: RegExp;
}

/** The page asks at its start who is signed in; nobody is a proper answer. */
const NOBODY_SIGNED_IN: ExpectedRefusal = { status: 401, path: /^\/api\/v1\/sessions\/current$/ };
/** The browser's own line on an answer that is no success; the answer itself is judged below. */
const FAILED_ANSWER = /^Failed to load resource: the server responded with a status of/;

/**
 * Collects errors of the console (among them every breach of the content security policy), of scripts, and answers of the
 * service that are no success.
 */
export class Complaints {
  private readonly found: string[] = [];
  private readonly expected: ExpectedRefusal[] = [NOBODY_SIGNED_IN];

  constructor(page: Page) {
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

  /** From now on, answers with this status at matching paths are part of the test. */
  expect(status: number, path: RegExp): void {
    this.expected.push({ status, path });
  }

  /** What was found since the last call. */
  take(): string[] {
    return this.found.splice(0);
  }
}
