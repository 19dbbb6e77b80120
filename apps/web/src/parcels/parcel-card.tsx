import { Button, TextInput } from '@mantine/core';
import { useFieldsForm, type Sending } from '../drafts/use-fields-form.js';
import { Tag } from '../look/marks.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { parcelWords as words } from '../words/parcels.js';
import { CheckForm } from './check-form.js';
import type { ParcelRow } from './parcels-view.js';
import type { useParcels } from './use-parcels.js';

const NOBODY = { carrier: '' };

type Props = { row: ParcelRow } & Pick<ReturnType<typeof useParcels>, 'act' | 'reconcile'>;

/** One parcel: where it goes, what is in it, and what is to be done with it here. */
export function ParcelCard({ row, act, reconcile }: Props) {
  const acted = act.variables?.id === row.id ? act : null;
  const checked = reconcile.variables?.id === row.id ? reconcile : null;
  const { id, version } = row;
  return (
    <li className="line stack-tight">
      <div className="row">
        <span className="strong">{row.ends}</span>
        <Tag tone={row.tone}>{row.state}</Tag>
      </div>
      <p className="soft">{row.sentence}</p>
      {row.turn === 'check' ? null : (
        <ul className="bullets">
          {row.objects.map((object) => (
            <li key={object.id}>
              {object.name} <span className="small soft">{object.detail}</span>{' '}
              {row.turn === 'send' ? (
                <Button
                  size="compact-sm"
                  variant="default"
                  aria-label={words.takeOutOf(object.code)}
                  onClick={() => {
                    act.mutate({ id, version, body: { action: 'take-out', objectId: object.id } });
                  }}
                >
                  {words.takeOut}
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      <Outrun error={acted?.error} />
      <Refusal error={isOutrun(acted?.error) ? null : acted?.error} />
      {row.turn === 'send' ? (
        <HandOver
          parcelId={id}
          send={{
            error: acted?.error ?? null,
            isPending: acted?.isPending ?? false,
            reset: act.reset,
            mutateAsync: (carrier) => act.mutateAsync({ id, version, body: { action: 'hand-over', carrier } }),
          }}
        />
      ) : null}
      {row.turn === 'receive' ? (
        <div>
          <Button
            loading={acted?.isPending ?? false}
            onClick={() => {
              act.mutate({ id, version, body: { action: 'receive' } });
            }}
          >
            {words.receive}
          </Button>
        </div>
      ) : null}
      {row.turn === 'check' ? (
        <>
          <Notice tone="caution">{row.caution}</Notice>
          <CheckForm
            row={row}
            pending={checked?.isPending ?? false}
            error={checked?.error ?? null}
            onCheck={(body) => {
              reconcile.mutate({ id, version, body });
            }}
          />
        </>
      ) : null}
    </li>
  );
}

/** What was refused for another reason than the carrier is said in the card. */
function HandOver({ parcelId, send }: { parcelId: string; send: Sending<string> }) {
  const { form, boxOf, submit } = useFieldsForm({
    key: `carrier.${parcelId}`,
    empty: NOBODY,
    read: ({ carrier }) => {
      const named = carrier.trim();
      return { body: named || null, wrong: named ? {} : { carrier: words.carrierMissing } };
    },
    send,
  });
  return (
    <form ref={form} onSubmit={submit} noValidate className="row row-end no-print">
      <TextInput label={words.carrier} description={words.carrierHint} maxLength={80} {...boxOf('carrier')} />
      <Button type="submit" loading={send.isPending}>
        {words.handOver}
      </Button>
    </form>
  );
}
