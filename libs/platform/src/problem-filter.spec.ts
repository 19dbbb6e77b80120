import { Body, Controller, Module, Post } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { DomainError } from '@archwright/kernel';
import { z } from 'zod';
import { createLogger } from './logger.js';
import { ProblemFilter } from './problem-filter.js';
import { validationPipe } from './validation.js';

const visit = z.strictObject({
  arch: z.enum(['upper', 'lower']),
  minutes: z.int().min(5).max(240),
  firm: z.union([z.literal('all'), z.int(), z.strictObject({ until: z.int() })]).default('all'),
});

@Controller('visits')
class VisitsController {
  @Post()
  open(@Body({ schema: visit }) body: z.output<typeof visit>): void {
    if (body.minutes === 13) throw new DomainError('casework.chair-conflict', 'Chair 2 is taken.', { chair: 2 });
    throw new Error('the connection string postgres://service:hidden-word@db was wrong');
  }
}

@Module({ controllers: [VisitsController] })
class VisitsModule {}

describe('problem documents', () => {
  let app: NestFastifyApplication;
  const lines: string[] = [];
  beforeAll(async () => {
    const logger = createLogger('api', 'info', { write: (line) => void lines.push(line) });
    app = await NestFactory.create<NestFastifyApplication>(VisitsModule, new FastifyAdapter(), { logger: false });
    app.useGlobalPipes(validationPipe());
    app.useGlobalFilters(new ProblemFilter(logger));
    await app.init();
  });
  afterAll(() => app.close());
  const post = (payload: object) => app.inject({ method: 'POST', url: '/visits', payload });

  it('name each refused field and what would be accepted', async () => {
    const answer = await post({ arch: 'both', minutes: 3, colour: 'red' });
    expect(answer.statusCode).toBe(400);
    expect(answer.headers['content-type']).toContain('application/problem+json');
    expect(answer.json()).toMatchObject({
      code: 'platform.request-invalid',
      errors: [
        { path: 'arch', accepted: 'upper, lower' },
        { path: 'minutes', accepted: 'at least 5' },
        { path: '', accepted: 'no field colour' },
      ],
    });
  });

  it('name every form that a value may have', async () => {
    const { errors } = (await post({ arch: 'upper', minutes: 5, firm: 0.5 })).json<{ errors: unknown[] }>();
    expect(errors).toEqual([{ path: 'firm', problem: 'Invalid input', accepted: 'all or int or object' }]);
  });

  it('carry the code and details of an expected refusal', async () => {
    const answer = await post({ arch: 'upper', minutes: 13 });
    expect(answer.json()).toMatchObject({
      status: 409,
      code: 'casework.chair-conflict',
      detail: 'Chair 2 is taken.',
      chair: 2,
    });
  });

  it('keep what nobody expected in the log, under the request id', async () => {
    const answer = await post({ arch: 'upper', minutes: 30 });
    const problem = answer.json<{ requestId: string }>();
    expect(answer.statusCode).toBe(500);
    expect(answer.body).not.toContain('hidden-word');
    expect(lines.some((line) => line.includes(problem.requestId))).toBe(true);
  });
});
