import { Button } from '@mantine/core';
import type { WhyNot } from '@archwright/contracts';
import { shortDate } from '../time/wording.js';
import { offerWords as words } from '../words/case.js';
import { toldWords } from '../words/told.js';

type Relax = NonNullable<WhyNot['relaxations'][number]['apply']>;

interface Props {
  whyNot: WhyNot;
  today: string;
  onRelax: (relax: Relax) => void;
}

/** Which step fails, and the smallest changes that would make a plan possible; what the desk may agree to applies itself. */
export function WhyNotSheet({ whyNot, today, onRelax }: Props) {
  return (
    <section className="sheet sheet-pad stack" aria-labelledby="why-not">
      <div>
        <h2 id="why-not">{words.whyNotTitle}</h2>
        <p>{toldWords(whyNot.told)}</p>
      </div>
      {whyNot.relaxations.length > 0 ? (
        <div className="stack-tight">
          <h3>{words.relax}</h3>
          <ul className="stack-tight">
            {whyNot.relaxations.map((relaxation) => (
              <li key={relaxation.changes.map(({ sentence }) => sentence).join(' ')} className="row">
                <Change relaxation={relaxation} onRelax={onRelax} />
                {relaxation.deliveryOn ? (
                  <span className="soft">{words.relaxGives(shortDate(relaxation.deliveryOn, today))}</span>
                ) : null}
              </li>
            ))}
          </ul>
        </div>
      ) : (
        <p>{words.noRelaxation}</p>
      )}
    </section>
  );
}

function Change({
  relaxation: { changes, apply },
  onRelax,
}: {
  relaxation: WhyNot['relaxations'][number];
  onRelax: Props['onRelax'];
}) {
  const sentence = changes.map(({ told }) => toldWords(told)).join(' ');
  if (apply === null) return <span>{sentence}</span>;
  return (
    <Button
      variant="default"
      onClick={() => {
        onRelax(apply);
      }}
    >
      {sentence}
    </Button>
  );
}
