import { Button } from '@mantine/core';
import { Link, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { useNow } from '../look/clock.js';
import { NotYet } from '../look/not-yet.js';
import { Notice } from '../look/notice.js';
import { Empty, ScreenHead, Waiting } from '../look/screen.js';
import { dateAndTime } from '../time/wording.js';
import { viewerZone } from '../time/zone.js';
import { ticketWords as words } from '../words/tickets.js';
import { TicketSheet } from './ticket-sheet.js';
import { isOnlyHere, ticketsOf } from './ticket-view.js';
import './tickets.css';
import { useTickets } from './use-tickets.js';

/** Tickets to print, one A6 sheet a job: what is left out is said by what is not ticked. */
export function TicketsPage() {
  const wanted = useSearch({ from: '/inside/bench/tickets' });
  const { practice, steps } = useTickets(wanted);
  const [leftOut, setLeftOut] = useState<ReadonlySet<string>>(new Set());
  const now = useNow(60_000);
  const { origin, hostname } = window.location;
  if (!steps.data) {
    return <NotYet asked={steps} what={words.loading} />;
  }
  const tickets = ticketsOf(steps.data, practice, origin);
  const chosen = tickets.filter(({ id }) => !leftOut.has(id));
  const printed = words.printed(dateAndTime(new Date(now).toISOString(), viewerZone(), practice.today));
  const leave = (ids: readonly string[], isLeft: boolean): void => {
    setLeftOut((before) => new Set(isLeft ? [...before, ...ids] : [...before].filter((id) => !ids.includes(id))));
  };
  const all = tickets.map(({ id }) => id);
  return (
    <div className="tickets-page">
      <ScreenHead title={words.title} sentence={words.sentence(chosen.length)}>
        {wanted.case === undefined ? (
          <Link to="/bench" search={{ lab: wanted.lab, on: wanted.on, from: wanted.on, centre: wanted.centre }}>
            {words.backToBench}
          </Link>
        ) : (
          <Link to="/bench/cases/$caseId" params={{ caseId: wanted.case }}>
            {words.backToCase}
          </Link>
        )}
        {chosen.length > 0 ? (
          <Button
            onClick={() => {
              window.print();
            }}
          >
            {words.print}
          </Button>
        ) : null}
      </ScreenHead>
      <Waiting busy={steps.isPlaceholderData}>
        <div className="stack">
          {isOnlyHere(hostname) ? (
            <div className="no-print">
              <Notice tone="caution">{words.onlyHere(origin)}</Notice>
            </div>
          ) : null}
          {tickets.length > 1 ? (
            <div className="row no-print">
              <Button
                variant="default"
                size="xs"
                onClick={() => {
                  leave(all, leftOut.size === 0);
                }}
              >
                {leftOut.size === 0 ? words.allButNone : words.all}
              </Button>
            </div>
          ) : null}
          {tickets.length === 0 ? (
            <div className="sheet">
              <Empty>{words.none}</Empty>
            </div>
          ) : null}
          <ul className="tickets">
            {tickets.map((ticket) => (
              <TicketSheet
                key={ticket.id}
                ticket={ticket}
                printed={printed}
                isChosen={!leftOut.has(ticket.id)}
                onChoose={
                  tickets.length > 1
                    ? (isChosen) => {
                        leave([ticket.id], !isChosen);
                      }
                    : null
                }
              />
            ))}
          </ul>
        </div>
      </Waiting>
    </div>
  );
}
