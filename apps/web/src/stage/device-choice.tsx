import { NativeSelect } from '@mantine/core';
import type { StageView } from '@archwright/contracts';
import { stageWords as words } from '../words/chair.js';
import type { ChosenDevices, Measures } from './devices-view.js';
import { kindsOf } from './devices-view.js';

interface Props {
  devices: StageView['devices'];
  chosen: ChosenDevices;
  onChoose: (measures: Measures, id: string) => void;
}

/** What the values of this visit are taken with, of the clinic's own devices; nothing where it has none. */
export function DeviceChoice({ devices, chosen, onChoose }: Props) {
  const kinds = kindsOf(devices);
  if (kinds.length === 0) return null;
  return (
    <div className="thirds">
      {kinds.map((measures) => (
        <NativeSelect
          key={measures}
          label={words.takenWith[measures]}
          value={chosen[measures] ?? ''}
          data={[
            { value: '', label: words.notStated },
            ...devices.filter((each) => each.measures === measures).map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={(event) => {
            onChoose(measures, event.currentTarget.value);
          }}
        />
      ))}
    </div>
  );
}
