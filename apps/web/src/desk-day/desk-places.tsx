import { Link } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { deskWords } from '../words/desk.js';
import { labOrderWords } from '../words/lab-orders.js';
import { frameWords } from '../words/frame.js';

/** The screens of the desk, one line under the heading. */
export function DeskPlaces() {
  const { role } = useSession();
  const words = deskWords.subPlaces;
  return (
    <nav className="sub-places" aria-label={frameWords.places.desk}>
      <Link to="/desk" activeOptions={{ exact: true, includeSearch: false }}>
        {words.day}
      </Link>
      {may.seeCalls(role) ? <Link to="/desk/calls">{words.calls}</Link> : null}
      <Link to="/desk/before-visits">{words.beforeVisits}</Link>
      {may.enterDisturbances(role) ? <Link to="/desk/falls-away">{words.fallsAway}</Link> : null}
      {may.enterDisturbances(role) ? <Link to="/desk/proposed-moves">{words.proposedMoves}</Link> : null}
      <Link to="/desk/parcels">{words.parcels}</Link>
      <Link to="/desk/lab-orders">{labOrderWords.link}</Link>
      {may.keepDesk(role) ? (
        <Link to="/desk/freed-time" activeOptions={{ includeSearch: false }}>
          {words.freedTime}
        </Link>
      ) : null}
      {may.keepPatients(role) ? <Link to="/desk/patients/new">{words.newPatient}</Link> : null}
      {may.openCases(role) ? (
        <>
          <Link to="/desk/cases/new" activeOptions={{ exact: true, includeSearch: true }}>
            {words.newCase}
          </Link>
          <Link to="/desk/cases/new" search={{ as: 'enquiry' }} activeOptions={{ includeSearch: true }}>
            {words.newEnquiry}
          </Link>
        </>
      ) : null}
    </nav>
  );
}
