import type { DisturbanceSubjects, DisturbanceView } from '@archwright/contracts';
import {
  affectedRows,
  costSentences,
  decisionsOn,
  subjectGroups,
  toEntry,
  type EntryDraft,
} from './disturbance-view.js';

const subjects: DisturbanceSubjects = {
  items: [
    { what: 'resource', id: 'chair-1', kind: 'chair', label: 'Chair 1', at: 'North clinic', zone: 'Europe/London' },
    { what: 'resource', id: 'ada', kind: 'clinician', label: 'Ada Example', at: 'North clinic', zone: 'Europe/London' },
    { what: 'clinic', id: 'north', kind: 'clinic', label: 'North clinic', at: 'North clinic', zone: 'Europe/London' },
  ],
};
const draft: EntryDraft = {
  subject: 'resource ada',
  fromDay: '2027-07-05',
  fromTime: '09:00',
  untilDay: '2027-07-06',
  untilTime: '17:00',
  reason: ' Course ',
};

describe('entering what falls away', () => {
  it('lists people before rooms, and does not name a clinic twice', () => {
    expect(subjectGroups(subjects)).toEqual([
      { group: 'Clinicians', items: [{ value: 'resource ada', label: 'Ada Example, North clinic' }] },
      { group: 'Chairs', items: [{ value: 'resource chair-1', label: 'Chair 1, North clinic' }] },
      { group: 'Clinics', items: [{ value: 'clinic north', label: 'North clinic' }] },
    ]);
  });

  it('reads the times in the zone of the place', () => {
    expect(toEntry(draft, subjects).body).toEqual({
      what: 'resource',
      id: 'ada',
      startsAt: '2027-07-05T08:00:00Z',
      endsAt: '2027-07-06T16:00:00Z',
      reason: 'Course',
    });
  });

  it.each([
    ['nothing chosen', { subject: '' }, ['subject']],
    ['no reason', { reason: ' ' }, ['reason']],
    ['an end before the start', { untilDay: '2027-07-05', untilTime: '08:00' }, ['until']],
    ['a time off the five minutes', { fromTime: '09:02' }, ['from']],
    ['nothing at all', { subject: '', fromDay: '', untilTime: '', reason: '' }, ['subject', 'from', 'until', 'reason']],
  ])('asks again for %s, beside its field', (_, change, fields) => {
    const { body, wrong } = toEntry({ ...draft, ...change }, subjects);
    expect([body, Object.keys(wrong)]).toEqual([null, fields]);
  });
});

it('leaves a closure that is in force to whoever keeps closures', () => {
  const decisions = (isClosed: boolean) => decisionsOn({ isClosed }).map(({ decision }) => decision);
  expect(decisions(false)).toEqual(['keep', 'withdraw']);
  expect(decisions(true)).toEqual(['keep']);
});

describe('what it falls on and costs', () => {
  it('names visits by their time and counts laboratory work', () => {
    const affected: DisturbanceView['affected'] = [
      {
        caseId: 'case',
        caseNumber: 'C-1',
        patientName: 'Ida Example',
        visits: [
          {
            appointmentId: 'visit',
            title: 'Final impressions',
            startsAt: '2027-07-05T09:00:00Z',
            clinicName: 'North clinic',
            zone: 'Europe/London',
          },
        ],
        labSteps: 2,
      },
    ];
    const [row] = affectedRows({ affected } as unknown as DisturbanceView, '2027-07-01');
    expect(row?.falls).toHaveLength(2);
    expect(row?.falls[0]).toMatch(/^Final impressions: .*, North clinic$/);
    expect(row?.falls[1]).toBe('2 pieces of laboratory work');
  });

  it('says how far it reaches, that no plan moves fewer, and whom to call', () => {
    const sentences = costSentences({
      id: 'proposal',
      planHash: 'hash',
      label: 'Fewest moves',
      reach: 'visits-moved',
      movedVisits: 2,
      leastMovedVisits: 2,
      otherCases: 0,
      untouchedCases: 1,
      ripples: [],
      left: [{ caseId: 'other', caseNumber: 'C-2', patientName: '' }],
    });
    expect(sentences).toEqual([
      'Only affected cases move visits.',
      'While all other visits stay, no plan for these cases moves fewer.',
      'Nobody has to be called.',
      '1 affected case stays as planned.',
      'No plan was found for C-2: decide about them by hand.',
    ]);
  });
});
