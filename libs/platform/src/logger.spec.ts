import { createLogger } from './logger.js';

describe('an error in the log', () => {
  const logged = (error: unknown): string => {
    const lines: string[] = [];
    createLogger('api', 'info', { write: (line) => void lines.push(line) }).error({ err: error }, 'request failed');
    return lines.join('');
  };

  it('says what went wrong and where', () => {
    const line = logged(new TypeError('nothing there', { cause: new RangeError('too far') }));
    const { err } = JSON.parse(line) as { err: unknown };
    expect(err).toMatchObject({
      type: 'TypeError',
      message: 'nothing there',
      stack: expect.stringContaining('logger.spec') as string,
      cause: { type: 'RangeError', message: 'too far' },
    });
  });

  it('names what a database refused, and repeats no value of a row or a query', () => {
    const driverError = Object.assign(new Error('Key (sign_in_name)=(nia@example.test) already exists.'), {
      severity: 'ERROR',
      detail: 'Failing row contains (Wanda, Walled-In).',
    });
    const error = Object.assign(new Error(driverError.message), {
      query: "INSERT INTO patient_identity (family_name) VALUES ('Walled-In')",
      parameters: ['Wanda', '$argon2id$hash'],
      driverError,
      code: '23505',
      constraint: 'directory_sign_in_name',
    });
    const line = logged(error);
    expect(line).toContain('directory_sign_in_name');
    expect(line).toContain('logger.spec');
    for (const value of ['nia@example.test', 'Walled-In', 'Wanda', '$argon2id$hash']) expect(line).not.toContain(value);
    expect(logged(new Error('not saved', { cause: driverError }))).not.toContain('Walled-In');
  });
});
