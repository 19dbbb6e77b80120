import type { AuditEntryView } from '@archwright/contracts';
import { auditRows, readSearch } from './audit-view.js';

it('asks for what was typed and leaves out what was not', () => {
  expect(readSearch({ deed: 'visit-', case: '', from: '2027-01-04' })).toEqual({
    query: { action: 'visit-', fromOn: '2027-01-04' },
  });
});

it('says at its field what a search accepts', () => {
  expect(readSearch({ deed: 'Moved!', case: '12', from: '2027-02-01', until: '2027-01-01' })).toEqual({
    errors: {
      deed: 'Enter lower-case words joined by hyphens, such as visit-moved.',
      case: 'Enter a case number such as 27-0012.',
      until: 'Choose the first day or a later one.',
    },
  });
});

it('tells an entry in words, the service by itself as well', () => {
  const entry: AuditEntryView = {
    id: 'a',
    at: '2027-01-04T09:30:00Z',
    by: null,
    action: 'visit-moved',
    subjectKind: 'appointment',
    subjectId: 'b',
    subjectName: null,
    caseId: 'c',
    caseNumber: '27-0001',
    requestId: null,
    details: { from: '09:00', count: 2 },
  };
  expect(auditRows([entry], 'Europe/Berlin', '2027-01-04')).toEqual([
    {
      id: 'a',
      at: 'Mon 4 Jan, 10:30',
      by: 'the service',
      deed: 'visit moved',
      about: '27-0001, appointment',
      caseId: 'c',
      details: 'from: 09:00; count: 2',
    },
  ]);
  const named = { ...entry, caseId: null, caseNumber: null, subjectKind: 'user', subjectName: 'Nia' };
  expect(auditRows([named], 'Europe/Berlin', '2027-01-04')[0]?.about).toBe('Nia, user');
});
