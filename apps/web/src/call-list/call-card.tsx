import { Button } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { RecordCall } from '@archwright/contracts';
import { Phone } from '../look/phone.js';
import { deskWords } from '../words/desk.js';
import type { CallRow } from './call-list-view.js';

const OUTCOMES = Object.keys(deskWords.outcome) as RecordCall['outcome'][];

interface Props {
  row: CallRow;
  pending: boolean;
  onOutcome: (outcome: RecordCall['outcome']) => void;
}

/** One call: whom, why, by when, how earlier attempts went, and how this one did. */
export function CallCard({ row, pending, onOutcome }: Props) {
  return (
    <li className="line stack-tight">
      <div>
        <div className="row">
          <span className="strong">{row.patientName}</span>
          <Phone number={row.phone} />
        </div>
        <p>{row.reason}</p>
        <p className="small soft">
          {row.open ? deskWords.callDue(row.due) : deskWords.done}
          {row.caseId ? (
            <>
              {' · '}
              <Link to="/desk/cases/$caseId" params={{ caseId: row.caseId }}>
                {deskWords.openCase}
              </Link>
            </>
          ) : null}
        </p>
        {row.attempts.map((attempt) => (
          <p key={attempt} className="small soft">
            {attempt}
          </p>
        ))}
      </div>
      {row.open ? (
        <div className="row no-print" role="group" aria-label={deskWords.outcomeOf(row.patientName)}>
          {OUTCOMES.map((outcome) => (
            <Button
              key={outcome}
              size="compact-sm"
              variant="default"
              disabled={pending}
              onClick={() => {
                onOutcome(outcome);
              }}
            >
              {deskWords.outcome[outcome]}
            </Button>
          ))}
        </div>
      ) : null}
    </li>
  );
}
