import { correction, generate } from 'lean-qr';
import { toSvgPath } from 'lean-qr/extras/svg';

/** Modules of quiet ground around the code, as many as ISO/IEC 18004 asks for. */
const QUIET = 4;

/**
 * A QR code of an address, dark on white in either scheme and on paper: cameras expect it so. Level M bears a loss of about
 * 15 %, such as a stain of stone or wax.
 */
export function ScanCode({ address, label }: { address: string; label: string }) {
  const code = generate(address, { minCorrectionLevel: correction.M });
  const whole = code.size + 2 * QUIET;
  return (
    <svg
      className="scan-code"
      viewBox={`${String(-QUIET)} ${String(-QUIET)} ${String(whole)} ${String(whole)}`}
      shapeRendering="crispEdges"
      role="img"
      aria-label={label}
    >
      <rect x={-QUIET} y={-QUIET} width={whole} height={whole} fill="#ffffff" />
      <path d={toSvgPath(code)} fill="#000000" data-size={code.size} />
    </svg>
  );
}
