import { Tag } from '../look/marks.js';
import { Empty } from '../look/screen.js';
import { labCaseWords as words } from '../words/bench.js';
import { enumerated } from '../words/plural.js';
import type { OrderSheet } from './lab-case-view.js';

function Order({ order }: { order: OrderSheet }) {
  return (
    <article className="sheet sheet-pad stack-tight" aria-labelledby={`order-${order.id}`}>
      <h3 id={`order-${order.id}`}>{order.title}</h3>
      <p className="small soft">{order.signed}</p>
      {order.superseded ? (
        <div>
          <Tag tone="caution">{words.superseded}</Tag>
        </div>
      ) : null}
      <p>
        <span className="soft">{words.toMake}:</span> {enumerated(order.work)}
      </p>
      <p>
        <span className="soft">{words.objects}:</span>{' '}
        {order.objects.length === 0 ? words.noObjects : enumerated(order.objects)}
      </p>
      <details className="details" open={!order.superseded}>
        <summary>{words.values}</summary>
        <dl className="order-values">
          {order.values.map(({ name, value }, index) => (
            <div key={`${name} ${String(index)}`} className="pair">
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      </details>
    </article>
  );
}

/** Every signed hand-over of the case, the latest first. */
export function OrderList({ orders }: { orders: OrderSheet[] }) {
  return (
    <section className="stack-tight" aria-labelledby="orders">
      <h2 id="orders">{words.orders}</h2>
      {orders.length === 0 ? (
        <div className="sheet">
          <Empty>{words.noOrders}</Empty>
        </div>
      ) : null}
      {orders.map((order) => (
        <Order key={order.id} order={order} />
      ))}
    </section>
  );
}
