import { z } from 'zod';

/** One field that was refused: where, what was wrong, and what would be accepted. */
const fieldProblem = z.object({ path: z.string(), problem: z.string(), accepted: z.string().optional() });

/** Every error answer (RFC 9457, `application/problem+json`). */
export const problem = z.looseObject({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  code: z.string(),
  requestId: z.string().optional(),
  errors: z.array(fieldProblem).optional(),
});
export type Problem = z.output<typeof problem>;
