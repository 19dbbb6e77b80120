import { NativeSelect } from '@mantine/core';
import type { Arch, PracticeView } from '@archwright/contracts';
import { openCaseWords as words } from '../words/case.js';
import { choosePath, pathsFor, type CaseDraft } from './open-case-view.js';

interface Props {
  practice: PracticeView;
  paths: CaseDraft['paths'];
  errors: Record<string, string>;
  onChange: (paths: CaseDraft['paths']) => void;
}

/** A path for each arch. */
export function PathFields({ practice, paths, errors, onChange }: Props) {
  const errorOf = (arch: Arch): string | undefined =>
    errors[`arches.${arch === 'upper' ? '0' : '1'}.pathVersionId`] ?? (arch === 'upper' ? errors['arches'] : undefined);
  return (
    <div className="halves">
      {(['upper', 'lower'] as const).map((arch) => (
        <NativeSelect
          key={arch}
          label={words.arch[arch]}
          value={paths[arch]}
          error={errorOf(arch)}
          data={[{ value: '', label: words.archNone }, ...pathsFor(practice, arch)]}
          onChange={(event) => {
            onChange(choosePath(practice, paths, arch, event.currentTarget.value));
          }}
        />
      ))}
    </div>
  );
}
