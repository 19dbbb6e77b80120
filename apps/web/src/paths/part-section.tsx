import { Button } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { editorWords as words } from '../words/path-editor.js';
import type { PathEditing } from './editing.js';
import { keyOf, partName, type PartRef } from './path-parts.js';

interface Props {
  title: string;
  startsOpen?: boolean;
  /** Something in it has to be mended: it stays open. */
  hasFault?: boolean;
  children: ReactNode;
}

/** Fields of a part that belong together, folded away until they are wanted. */
export function PartSection({ title, startsOpen = false, hasFault = false, children }: Props) {
  const [isOpen, setOpen] = useState(startsOpen || hasFault);
  if (hasFault && !isOpen) setOpen(true);
  return (
    <details
      className="details path-section"
      open={isOpen}
      onToggle={(event) => {
        setOpen(event.currentTarget.open);
      }}
    >
      <summary>{title}</summary>
      <div className="stack-tight">{children}</div>
    </details>
  );
}

interface LinksProps {
  editing: PathEditing;
  parts: readonly PartRef[];
  empty?: string;
}

/** Other parts that belong to this one, each a way there. */
export function PartLinks({ editing, parts, empty }: LinksProps) {
  if (parts.length === 0) return empty === undefined ? null : <p className="small soft">{empty}</p>;
  return (
    <ul className="path-links">
      {parts.map((part) => (
        <li key={keyOf(part)}>
          <Button
            variant="subtle"
            onClick={() => {
              editing.choose(part);
            }}
          >
            {linkName(editing, part)}
          </Button>
        </li>
      ))}
    </ul>
  );
}

/** A stretch of work is named by its visits alone, so its kind has to be said as well. */
function linkName({ path }: PathEditing, part: PartRef): string {
  const name = partName(path, part);
  return part.kind === 'phase' ? words.chosen(words.kinds.phase, name) : name;
}

/** A button that adds a part and opens it. */
export function AddPart({ label, onAdd }: { label: string; onAdd: () => void }) {
  return (
    <div>
      <Button variant="default" onClick={onAdd}>
        {label}
      </Button>
    </div>
  );
}
