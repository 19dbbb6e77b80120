import { useState, type ReactNode } from 'react';

interface Props {
  /** Where a link to it leads. */
  id: string;
  title: string;
  /** Something typed in it waits to be saved. */
  startsOpen: boolean;
  children: ReactNode;
}

/** A sheet that is folded away; what it holds is made when it is first opened, and stays. */
export function LateDetails({ id, title, startsOpen, children }: Props) {
  const [isMade, setMade] = useState(startsOpen);
  return (
    <details
      id={id}
      className="sheet sheet-pad details"
      open={startsOpen ? true : undefined}
      onToggle={(event) => {
        if (event.currentTarget.open) setMade(true);
      }}
    >
      <summary>{title}</summary>
      {isMade ? children : null}
    </details>
  );
}
