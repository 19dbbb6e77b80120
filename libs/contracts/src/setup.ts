import { z } from 'zod';
import { id, instant, localDate, localTime, plannedDate, slug, version, weekday } from './primitives.js';
import { recurringDeparture, recurringHours } from './recurring-time.js';

const name = z.string().trim().min(1, 'a name').max(120);
const wayMinutes = z.int().min(0).max(2880);
const hours = z.array(recurringHours).max(20);
const departures = z.array(recurringDeparture).max(40);

const ACCEPTED_ZONE = 'a time zone such as Europe/London';
const zone = z.string().refine((text) => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: text }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}, ACCEPTED_ZONE);

const clinicSetup = z.strictObject({
  kind: z.literal('clinic'),
  name,
  zone,
  address: z.string().trim().min(1, 'an address').max(300),
  phone: z
    .string()
    .regex(/^\+?[0-9 ()./-]{5,30}$/, 'a telephone number such as +44 20 7946 0000')
    .nullable(),
  hours,
});

const chairSetup = z.strictObject({ kind: z.literal('chair'), clinicId: id, label: name, wheelchairRoom: z.boolean() });

const kitSetup = z.strictObject({
  kind: z.literal('kit'),
  clinicId: id,
  /** What visits of a path ask for. */
  code: slug,
  label: name,
  reprocessingMinutes: z.int().min(0).max(1440),
});

const personSetup = z.strictObject({
  kind: z.literal('person'),
  role: z.enum(['clinician', 'assistant']),
  name,
  /** What visits of a path ask for. */
  skills: z.array(slug).max(40),
  /** Where the person works, each clinic once, with the hours there. */
  workplaces: z
    .array(z.strictObject({ clinicId: id, hours }))
    .max(40)
    .refine((list) => new Set(list.map(({ clinicId }) => clinicId)).size === list.length, 'each clinic once'),
});

const laboratorySetup = z.strictObject({
  kind: z.literal('laboratory'),
  name,
  zone,
  /** What is there by this time counts as received that day. */
  cutOffLocal: localTime,
  closedWeekdays: z.array(weekday).max(6, 'at least one open weekday'),
  hours,
});

const workCentreSetup = z.strictObject({
  kind: z.literal('work-centre'),
  laboratoryId: id,
  /** What laboratory steps of a path ask for. */
  code: slug,
  name,
  batch: z.strictObject({ kind: z.enum(['curing-cycle', 'print-plate']), size: z.int().min(1).max(100) }).nullable(),
  places: z.int().min(1).max(50),
  /** Empty: those of its laboratory. */
  hours,
});

const courierSetup = z.strictObject({
  kind: z.literal('courier'),
  clinicId: id,
  laboratoryId: id,
  name,
  toLabMinutes: wayMinutes,
  toClinicMinutes: wayMinutes,
  /** By the clock of the clinic. */
  toLab: departures,
  /** By the clock of the laboratory. */
  toClinic: departures,
});

const deviceSetup = z.strictObject({
  kind: z.literal('device'),
  clinicId: id,
  name,
  /** Which readings are taken with it. */
  measures: z.enum(['lengths', 'angles', 'tracings']),
});

const closureSetup = z
  .strictObject({
    kind: z.literal('closure'),
    of: z.strictObject({ kind: z.enum(['clinic', 'laboratory', 'work-centre', 'resource']), id }),
    fromOn: plannedDate,
    /** The last closed date. */
    lastOn: plannedDate,
    /** Begins at this time of the first date; null: with it. */
    fromLocal: localTime.nullable(),
    /** Ends at this time of the last date; null: with it. */
    untilLocal: localTime.nullable(),
    reason: z.string().trim().min(1, 'a reason').max(200),
  })
  .refine(({ fromOn, lastOn }) => fromOn <= lastOn, { path: ['lastOn'], error: 'the first date or a later one' })
  .refine(
    ({ fromOn, lastOn, fromLocal, untilLocal }) =>
      fromOn !== lastOn || (fromLocal ?? '00:00') < (untilLocal ?? '24:00'),
    { path: ['untilLocal'], error: 'a time after the beginning' },
  );

/** One thing that the practice consists of, whole: what is sent replaces what was there. */
export const setupRecord = z.discriminatedUnion('kind', [
  clinicSetup,
  chairSetup,
  kitSetup,
  personSetup,
  laboratorySetup,
  workCentreSetup,
  courierSetup,
  deviceSetup,
  closureSetup,
]);
export type SetupRecord = z.output<typeof setupRecord>;
export type SetupKind = SetupRecord['kind'];

export const setupEntry = z.object({
  id,
  version,
  /** Out of use; what was booked keeps its place. */
  isRetired: z.boolean(),
  record: setupRecord,
});
export type SetupEntry = z.output<typeof setupEntry>;

export const setupView = z.object({
  today: localDate,
  entries: z.array(setupEntry),
  /** Places of work centres by name: no entries of their own, but each can be closed by itself. */
  benchPlaces: z.array(z.object({ id, label: z.string(), isRetired: z.boolean() })),
  /** What the published paths ask for, so that a word of the practice is the word of its paths. */
  asked: z.object({ skills: z.array(slug), kits: z.array(slug), workCentres: z.array(slug) }),
});
export type SetupView = z.output<typeof setupView>;

/** A change before it is made: a record as it would be, or one taken out of use or back into it. */
export const setupChange = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('add'), record: setupRecord }),
  z.strictObject({ do: z.literal('replace'), id, record: setupRecord }),
  z.strictObject({ do: z.literal('retire'), id }),
  z.strictObject({ do: z.literal('return'), id }),
  /** A closure alone is removed. */
  z.strictObject({ do: z.literal('drop'), id }),
]);
export type SetupChange = z.output<typeof setupChange>;

export const setRetirement = z.strictObject({ isRetired: z.boolean() });
export type SetRetirement = z.output<typeof setRetirement>;

/** Booked time to come that a change leaves without a place. It stays booked until a person moves it. */
export const strandedTime = z.object({
  kind: z.enum(['visit', 'lab-work', 'courier']),
  caseId: id.nullable(),
  caseNumber: z.string(),
  appointmentId: id.nullable(),
  /** Null for laboratory work and couriers, which travel without names. */
  patientName: z.string().nullable(),
  startsAt: instant,
  endsAt: instant,
  zone: z.string(),
  why: z.string(),
});
export type StrandedTime = z.output<typeof strandedTime>;

/** What a change would do, before it is made. */
export const setupPreview = z.object({
  /** How much booked time to come was looked at. */
  looked: z.int(),
  /** What would lie outside hours then and does not now. */
  stranded: z.array(strandedTime),
  /** What lies outside hours now and would not then. */
  settled: z.int(),
});
export type SetupPreview = z.output<typeof setupPreview>;
