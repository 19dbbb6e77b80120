import { QueryFailedError } from 'typeorm';
import { isDatabaseAway } from './database-away.js';

const failure = (code: string) => Object.assign(new Error('refused'), { code });

describe('a failed statement', () => {
  it.each([
    ['the server shuts down', failure('57P01')],
    ['the server crashed', failure('57P02')],
    ['the server starts', failure('57P03')],
    ['nobody listens', failure('ECONNREFUSED')],
    ['nobody listens at any address', new AggregateError([failure('ECONNREFUSED'), failure('ECONNREFUSED')])],
    ['the connection broke', new Error('Connection terminated unexpectedly')],
    ['the connection broke under a query', new QueryFailedError('SELECT 1', [], failure('08006'))],
  ])('is for later when %s', (_, error) => {
    expect(isDatabaseAway(error)).toBe(true);
  });

  it.each([
    ['refuses a row', new QueryFailedError('INSERT', [], failure('23P01'))],
    ['has a fault of ours', new TypeError('x is undefined')],
    ['is no error', 'ECONNREFUSED'],
  ])('is a matter of the statement when it %s', (_, error) => {
    expect(isDatabaseAway(error)).toBe(false);
  });
});
