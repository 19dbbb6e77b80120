import {
  caseView,
  caughtMail,
  holdView,
  importedCalendar,
  offersView,
  patientView,
  practiceView,
  reminderView,
  type CaseView,
  type Offer,
  type PracticeView,
} from '@archwright/contracts';
import { z } from 'zod';
import { Cast, StoryBroken, must } from './cast.js';
import { Narrator, dateInWords, whenInWords } from './narrator.js';
import { playRemake } from './play-remake.js';
import { Treatment } from './treatment.js';

/** Plays one case through the running service at `url`; throws when a step did not happen. */
export async function play(url: string, write: (line: string) => void): Promise<void> {
  const narrator = new Narrator(write);
  const cast = new Cast(url);
  await cast.signIn();
  const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });

  narrator.scene('A chair is blocked by an imported calendar');
  const blocked = await blockChair(cast, practice, narrator);

  narrator.scene('A new patient asks for complete dentures with printed base plates');
  const opened = await openCase(cast, practice, narrator);

  narrator.scene('Three offers for the whole chain');
  const offers = await askForOffers(cast, opened, blocked, narrator);

  narrator.scene('One offer is held, then confirmed');
  const booked = await holdAndConfirm(cast, opened, must(offers[0], 'a first offer'), narrator);
  const reminders = await cast.desk.call({
    method: 'GET',
    path: `/cases/${booked.id}/reminders`,
    answer: z.object({ items: z.array(reminderView) }),
  });
  if (reminders.items.length === 0) throw new StoryBroken('expected reminders to be scheduled with the booking');
  narrator.say(
    `${String(reminders.items.length)} reminders are scheduled, the first for ${whenInWords(must(reminders.items[0], 'a reminder').dueAt, booked.zone)}.`,
  );

  const treatment = new Treatment(cast, booked.id, narrator);
  narrator.scene('Examination, and the base plates are made');
  await treatment.consent();
  await treatment.completeStage('D1');
  await treatment.makeLabWork('D1');

  const laboratory = must(practice.laboratories[0], 'a laboratory');
  await playRemake(cast, treatment, laboratory.id, narrator);

  narrator.scene('Trial placement, finishing, delivery');
  await treatment.completeRemaining();
  const closing = await cast.desk.call({ method: 'GET', path: `/cases/${booked.id}`, answer: caseView });
  const delivered = must(
    closing.stages.find((stage) => stage.isDelivery && stage.state === 'passed'),
    'the placement to be passed',
  );
  narrator.say(
    `The dentures were placed on ${whenInWords(must(delivered.startsAt, 'a time of placement'), closing.zone)}.`,
  );
  await showMail(cast, narrator);
}

async function blockChair(
  cast: Cast,
  practice: PracticeView,
  narrator: Narrator,
): Promise<{ chairId: string; on: string }> {
  const clinic = must(
    practice.clinics.find(({ name }) => name === 'North clinic'),
    'the north clinic',
  );
  const chair = must(clinic.chairs[0], 'a chair');
  const on = practice.today;
  const day = on.replaceAll('-', '');
  const calendar = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Example//Chair service//EN',
    'BEGIN:VEVENT',
    'UID:chair-service@example.test',
    `DTSTAMP:${day}T000000Z`,
    `DTSTART;VALUE=DATE:${day}`,
    'RRULE:FREQ=DAILY;COUNT=14',
    'SUMMARY:Chair service',
    'END:VEVENT',
    'END:VCALENDAR',
    '',
  ].join('\r\n');
  const imported = await cast.desk.call({
    method: 'POST',
    path: `/resources/${chair.id}/calendar`,
    body: { source: 'chair-service', calendar },
    answer: importedCalendar,
  });
  if (imported.busy === 0) throw new StoryBroken('expected the feed to block the chair');
  narrator.say(`${chair.label} of the ${clinic.name} is out of service for fourteen days from ${dateInWords(on)}.`);
  return { chairId: chair.id, on };
}

async function openCase(cast: Cast, practice: PracticeView, narrator: Narrator): Promise<CaseView> {
  const path = must(
    practice.paths.find(({ code }) => code === 'digital-printed-bases'),
    'the digital path',
  );
  const patient = await cast.desk.call({
    method: 'POST',
    path: '/patients',
    answer: patientView,
    body: {
      givenName: 'Ismene',
      familyName: `Story-Example`,
      birthOn: '1951-06-14',
      mail: 'ismene@example.test',
      phone: '+44 20 7946 0011',
      zone: 'Europe/London',
      reminderConsent: ['mail'],
      wishes: { weekdays: [1, 2, 3, 4], from: '09:00', to: '14:00', unavailableOn: [] },
    },
  });
  const opened = await cast.desk.call({
    method: 'POST',
    path: '/cases',
    answer: caseView,
    body: {
      patientId: patient.id,
      arches: [
        { arch: 'upper', pathVersionId: path.versionId },
        { arch: 'lower', pathVersionId: path.versionId },
      ],
      clinicIds: practice.clinics.map(({ id }) => id),
    },
  });
  narrator.say(`Case ${opened.number}: both arches, ${path.title.toLowerCase()}, at either of two clinics.`);
  return opened;
}

async function askForOffers(
  cast: Cast,
  opened: CaseView,
  blocked: { chairId: string; on: string },
  narrator: Narrator,
): Promise<Offer[]> {
  const { offers, whyNot } = await cast.desk.call({
    method: 'POST',
    path: `/cases/${opened.id}/offers`,
    body: { count: 3 },
    answer: offersView,
  });
  if (offers.length !== 3)
    throw new StoryBroken(
      `expected three offers, got ${String(offers.length)} (${whyNot?.sentence ?? 'no reason given'})`,
    );
  const freeAgainMs = Date.parse(`${blocked.on}T00:00:00Z`) + 14 * 86_400_000;
  for (const { plan } of offers) {
    const clash = plan.visits.find(
      (visit) => visit.chairId === blocked.chairId && Date.parse(visit.startsAt) < freeAgainMs - 3_600_000,
    );
    if (clash !== undefined)
      throw new StoryBroken(`expected every offer to avoid the blocked chair, ${clash.startsAt} uses it`);
  }
  narrator.table(
    ['offer', 'delivery', 'visits', 'gives up'],
    offers.map(({ label, plan }) => [
      label,
      dateInWords(must(plan.deliveryOn, 'a delivery date')),
      plan.visits.map((visit) => whenInWords(visit.startsAt, visit.zone).split(',')[0]).join(' · '),
      plan.givesUp.map(({ sentence }) => sentence).join(' ') || 'nothing',
    ]),
  );
  narrator.say('None of them uses the blocked chair while it is out of service.');
  return offers;
}

async function holdAndConfirm(cast: Cast, opened: CaseView, chosen: Offer, narrator: Narrator): Promise<CaseView> {
  const hold = await cast.desk.call({
    method: 'POST',
    path: `/cases/${opened.id}/holds`,
    body: { offerId: chosen.id, kind: 'phone' },
    answer: holdView,
  });
  narrator.say(`Held until ${whenInWords(hold.expiresAt, opened.zone)} while the patient is on the phone.`);
  const booked = await cast.desk.call({
    method: 'POST',
    path: `/holds/${hold.id}/confirm`,
    body: { planHash: hold.planHash, firm: 'all' },
    answer: caseView,
  });
  const visits = booked.stages.filter((stage) => stage.appointmentState === 'booked').length;
  const steps = booked.labSteps.filter((step) => step.state === 'planned').length;
  if (visits === 0 || steps === 0) throw new StoryBroken('expected visits and laboratory work to be booked');
  narrator.say(`Confirmed: ${String(visits)} visits and ${String(steps)} laboratory steps are booked.`);
  return booked;
}

async function showMail(cast: Cast, narrator: Narrator): Promise<void> {
  const { items } = await cast.desk.call({
    method: 'GET',
    path: '/caught-mail',
    answer: z.object({ items: z.array(caughtMail) }),
  });
  const toPatient = items.filter(({ to }) => to.includes('ismene@example.test'));
  if (toPatient.length === 0) throw new StoryBroken('expected mail to the patient');
  narrator.say(
    `The patient received ${String(toPatient.length)} messages, none of which names a treatment in its subject:`,
  );
  narrator.table(
    ['subject', 'calendar'],
    toPatient.map(({ subject, calendar }) => [subject, calendar === null ? 'no' : 'yes']),
  );
}
