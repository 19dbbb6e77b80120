import { z } from 'zod';

export const visitPlace = z.enum(['clinic', 'home', 'care-home']);

/**
 * Where the visits of a case are made; those that need the clinic, such as surgery, stay there. Without a statement the
 * clinician travels 25 minutes each way: common practice, no source.
 */
export const setVisitPlace = z.discriminatedUnion('place', [
  z.strictObject({ place: z.literal('clinic') }),
  z.strictObject({ place: z.enum(['home', 'care-home']), travelMinutes: z.int().min(0).max(180).default(25) }),
]);
export type SetVisitPlace = z.output<typeof setVisitPlace>;
