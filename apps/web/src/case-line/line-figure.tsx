import { Empty } from '../look/screen.js';
import { lineWords } from '../words/line.js';
import { Legend } from './legend.js';
import { CaseLineDrawing } from './line-drawing.js';
import { layLines, type Line } from './line-view.js';
import { useWidth } from './use-width.js';

const LEAST_PX = 620;

interface Props {
  line: Line;
  label: string;
  /** Said where nothing of the case has a time yet. */
  nothing: string;
}

/** The line of one case, as wide as there is room. */
export function LineFigure({ line, label, nothing }: Props) {
  const [attach, width] = useWidth(LEAST_PX);
  const laid = layLines([line], width);
  const row = laid?.rows[0];
  return (
    <figure className="sheet case-figure" aria-label={label}>
      {laid && row ? (
        <>
          <div className="scroll-x" tabIndex={0} role="group" aria-label={label} ref={attach}>
            <CaseLineDrawing axis={laid.axis} row={row} levels={lineWords.levels} />
          </div>
          <figcaption className="line">
            <Legend />
          </figcaption>
        </>
      ) : (
        <Empty>{nothing}</Empty>
      )}
    </figure>
  );
}
