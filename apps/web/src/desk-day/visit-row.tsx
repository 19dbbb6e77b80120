import { Button } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { Mark, Tag } from '../look/marks.js';
import { Phone } from '../look/phone.js';
import { deskWords } from '../words/desk.js';
import { lostVisitWords } from '../words/lost.js';
import type { DayRow } from './desk-day-view.js';

interface Props {
  row: DayRow;
  mayAct: boolean;
  mayChange: boolean;
  showsClinic: boolean;
  pending: boolean;
  onAct: (action: DayRow['actions'][number]['action']) => void;
}

/** One visit of the day with what comes next. */
export function VisitRow({ row, mayAct, mayChange, showsClinic, pending, onAct }: Props) {
  return (
    <tr>
      <td className="day-time">
        <span className="strong">{row.time}</span>
        <span className="small soft"> –{row.until}</span>
        {row.zoneNote ? <div className="small soft">{row.zoneNote}</div> : null}
      </td>
      <td>
        <Link to="/desk/patients/$patientId" params={{ patientId: row.patientId }} className="strong">
          {row.patientName}
        </Link>
        <div className="small soft">{deskWords.bornOn(row.birth)}</div>
        {row.phone ? (
          <div className="small">
            <Phone number={row.phone} />
          </div>
        ) : null}
        {row.needs.map((need) => (
          <div key={need} className="small">
            {need}
          </div>
        ))}
      </td>
      <td>
        {row.caseId && row.caseNumber ? (
          <Link to="/desk/cases/$caseId" params={{ caseId: row.caseId }}>
            {row.caseNumber}
          </Link>
        ) : null}
        <div>{row.title}</div>
        <div className="small soft day-with-narrow">{deskWords.withIn(row.clinician, row.chair)}</div>
      </td>
      <td className="small">
        {row.clinician}
        <div className="soft">{showsClinic ? deskWords.placeAt(row.clinic, row.chair) : row.chair}</div>
      </td>
      <td>
        <span className="row nowrap day-state">
          <Mark shape={row.mark} /> {deskWords.state[row.state]}
        </span>
        {row.late ? (
          <div className="no-print">
            <Tag tone="caution">{row.late}</Tag>
          </div>
        ) : null}
      </td>
      <td className="no-print">
        <div className="row">
          {mayAct
            ? row.actions.map(({ action, label }, index) => (
                <Button
                  key={action}
                  size="xs"
                  variant={index === 0 ? 'filled' : 'default'}
                  loading={pending}
                  aria-label={deskWords.actionOn(label, row.patientName)}
                  onClick={() => {
                    onAct(action);
                  }}
                >
                  {label}
                </Button>
              ))
            : null}
          {mayChange && row.change && row.caseId ? (
            <Link
              to="/desk/cases/$caseId/visits/$appointmentId"
              params={{ caseId: row.caseId, appointmentId: row.id }}
              className="small"
              aria-label={deskWords.actionOn(row.change, row.patientName)}
            >
              {row.change}
            </Link>
          ) : null}
          {mayChange && row.state === 'missed' && row.caseId ? (
            <Link
              to="/desk/falls-away/visits/$appointmentId"
              params={{ appointmentId: row.id }}
              className="small"
              aria-label={lostVisitWords.linkOf(row.patientName)}
            >
              {lostVisitWords.link}
            </Link>
          ) : null}
        </div>
      </td>
      <td className="print-only day-ticks" aria-hidden="true">
        ☐ ☐ ☐
      </td>
    </tr>
  );
}
