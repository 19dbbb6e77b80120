import { Button } from '@mantine/core';
import { prescriptionPreview, type PrescriptionPreviewQuery } from '@archwright/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { read } from '../api/client.js';
import { Refusal } from '../look/notice.js';
import { FirstWait } from '../look/screen.js';
import { cautionWords } from '../words/cautions.js';
import { stageWords } from '../words/chair.js';
import { enumerated } from '../words/plural.js';

const words = stageWords.preview;

interface Props {
  stageId: string;
  /** What is written on it so far: with another text another prescription would be signed. */
  given: PrescriptionPreviewQuery;
}

/** What the laboratory would be sent, shown before it is signed, as the laboratory reads it. */
export function PrescriptionPreview({ stageId, given }: Props) {
  const key = JSON.stringify(given);
  const [asked, setAsked] = useState<string | null>(null);
  const isAsked = asked === key;
  const preview = useQuery({
    queryKey: ['stage', stageId, 'prescription-preview', key],
    queryFn: () => read(`/stages/${stageId}/prescription-preview`, prescriptionPreview, given),
    enabled: isAsked,
    placeholderData: undefined,
  });
  if (!isAsked) {
    return (
      <div>
        <Button
          variant="default"
          onClick={() => {
            setAsked(key);
          }}
        >
          {words.show}
        </Button>
      </div>
    );
  }
  if (!preview.data) {
    return preview.error ? (
      <Refusal error={preview.error} onRetry={() => void preview.refetch()} />
    ) : (
      <FirstWait what={words.title} />
    );
  }
  const { laboratoryName, work, values, objects, avoidMaterials } = preview.data;
  const lines = [
    { name: words.laboratory, value: laboratoryName ?? words.noLaboratory },
    { name: words.work, value: enumerated(work) },
    { name: words.objects, value: objects.length === 0 ? words.noObjects : enumerated(objects) },
    ...(avoidMaterials.length === 0
      ? []
      : [{ name: words.avoid, value: enumerated(avoidMaterials.map((one) => cautionWords.materials[one])) }]),
    ...values,
  ];
  return (
    <section className="stack-tight" aria-labelledby="prescription-preview">
      <h3 id="prescription-preview">{words.title}</h3>
      <dl className="pairs small">
        {lines.map(({ name, value }, index) => (
          <div key={`${name} ${String(index)}`} className="pair">
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p className="small soft">{words.note}</p>
    </section>
  );
}
