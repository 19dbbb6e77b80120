import { readTracing } from '@archwright/interop';
import { drawEvaluation, evaluateTracing, type TracingInput } from '@archwright/tracing';
import { tracingLines, tracingReport } from './tracing-report.js';

// Arms and apex by hand: right y = x/2 + 1, left y = 2.1 - 0.6 x, crossing at (1, 1.5).
const CSV = `phase,x_mm,y_mm
right,2,2
right,4,3
right,6,4
left,0,2.1
left,-2,3.3
left,-4,4.5
closure,1,1.6
closure,1.1,1.5
closure,0.9,1.5
closure,1,1.4
closure,1,1.5
`;
const input = (text: string): TracingInput => ({
  points: readTracing(new TextEncoder().encode(text)),
  stylusOn: 'lower',
  view: 'as-worn',
});

describe('cli trace', () => {
  it('reports apex, arms, closures and verdict', () => {
    const report = tracingReport(evaluateTracing(input(CSV)));
    expect(report).toMatchObject({
      apex: { xMm: 1, yMm: 1.5 },
      apexAngleDeg: 122.4712,
      arms: { right: { angleDeg: 26.5651, lengthMm: 5.5902, rmsMm: 0 }, left: { angleDeg: 30.9638 } },
      asymmetryDeg: 4.3987,
      protrusiveDeviationDeg: null,
      closure: { n: 5, meanXMm: 1, meanYMm: 1.5, maxPairMm: 0.2 },
      offsetMm: 0,
      form: 'typical',
      verdict: 'pass',
      reasons: [],
    });
    expect(tracingLines(report).join('\n')).toContain('does not replace professional judgement');
  });

  it('says what speaks against the tracing, and against the stated view', () => {
    const mirrored = tracingReport(evaluateTracing({ ...input(CSV), view: 'mirrored' }));
    expect(mirrored).toMatchObject({ verdict: 'caution', reasons: [expect.stringContaining('check the stated view')] });
    const few = CSV.split('\n').slice(0, 9).join('\n');
    expect(tracingReport(evaluateTracing(input(few)))).toMatchObject({
      verdict: 'caution',
      reasons: [expect.stringContaining('2 closures (5 wanted)')],
    });
    const none = CSV.split('\n').slice(0, 7).join('\n');
    expect(tracingReport(evaluateTracing(input(none)))).toMatchObject({
      verdict: 'caution',
      reasons: [expect.stringContaining('no closures (5 wanted')],
    });
  });

  it('draws every point once, and nothing that needs a network', () => {
    const drawing = drawEvaluation(input(CSV), evaluateTracing(input(CSV)));
    expect(drawing.match(/r="0.06"/g)).toHaveLength(3);
    expect(drawing.match(/width="0.11"/g)).toHaveLength(3);
    expect(drawing.match(/r="0.12"/g)).toHaveLength(5);
    expect(drawing).toContain('<ellipse');
    expect(drawing.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/http|<script|<image/);
  });

  it('refuses a file that is no tracing by row', () => {
    expect(() => readTracing(new TextEncoder().encode(CSV.replace('left,0', 'up,0')))).toThrow(
      'Line 5: there is no phase "up". Accepted: right, left, protrusive, closure.',
    );
    expect(() => readTracing(new TextEncoder().encode(CSV.replace('x_mm', 'x')))).toThrow(
      'There is no column "x_mm". Columns: phase, x, y_mm.',
    );
  });
});
