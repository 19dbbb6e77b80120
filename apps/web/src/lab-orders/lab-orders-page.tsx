import { Button } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { DeskPlaces } from '../desk-day/desk-places.js';
import { useSession } from '../frame/use-session.js';
import { useNow } from '../look/clock.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { labOrderWords as words } from '../words/lab-orders.js';
import { ticketWords } from '../words/tickets.js';
import { orderZone, shapeOrders, type OrderRow } from './lab-order-view.js';
import { OrderCard } from './order-card.js';
import { useLabOrders } from './use-lab-orders.js';

/** Work between a practice and laboratories of their own: each side sees what it has sent or received, and answers. */
export function LabOrdersPage() {
  const { role } = useSession();
  const { practice, orders } = useLabOrders();
  const [said, setSaid] = useState('');
  const nowMs = useNow(60_000);
  const { today } = practice;
  const zone = orderZone(practice, role);
  const isLab = role === 'lab';
  const items = orders.data?.pages.flatMap((page) => page.items) ?? [];
  const { out, over, sentence } = shapeOrders(items, { role, zone, today, nowMs });
  const shown = { zone, onDone: setSaid };
  return (
    <>
      <ScreenHead
        title={isLab ? words.titleAtLab : words.title}
        sentence={orders.data && items.length > 0 ? sentence : undefined}
      >
        {isLab ? <Link to="/bench">{ticketWords.backToBench}</Link> : null}
      </ScreenHead>
      <div className="stack">
        {isLab ? null : <DeskPlaces />}
        <p role="status" className={said ? 'notice notice-go' : 'unseen'}>
          {said}
        </p>
        <Refusal error={orders.error} onRetry={() => void orders.refetch()} />
        {orders.isLoading ? <FirstWait what={words.loading} /> : null}
        {orders.data && items.length === 0 ? (
          <div className="sheet">
            <Empty>{isLab ? words.noneAtLab : words.none}</Empty>
          </div>
        ) : null}
        <Orders id="orders-out" title={words.out} rows={out} {...shown} />
        <Orders id="orders-over" title={words.over} rows={over} {...shown} />
        {orders.hasNextPage ? (
          <div>
            <Button variant="default" loading={orders.isFetchingNextPage} onClick={() => void orders.fetchNextPage()}>
              {words.more}
            </Button>
          </div>
        ) : null}
      </div>
    </>
  );
}

interface OrdersProps {
  id: string;
  title: string;
  rows: readonly OrderRow[];
  zone: string;
  onDone: (said: string) => void;
}

function Orders({ id, title, rows, zone, onDone }: OrdersProps) {
  if (rows.length === 0) return null;
  return (
    <section className="stack-tight column" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <ul className="sheet lines">
        {rows.map((row) => (
          <OrderCard key={row.id} row={row} zone={zone} onDone={onDone} />
        ))}
      </ul>
    </section>
  );
}
