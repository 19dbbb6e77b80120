import { careWalls } from './care-walls.js';
import { deskWalls } from './desk-walls.js';
import { laboratoryWalls } from './laboratory-walls.js';
import { setupWalls } from './setup-walls.js';
import { treatmentWalls } from './treatment-walls.js';
import type { Wall } from './wall.js';

/** By the route's name in the API's description. */
export const WALLS: Readonly<Record<string, Wall>> = {
  ...deskWalls,
  ...treatmentWalls,
  ...laboratoryWalls,
  ...careWalls,
  ...setupWalls,
};

/** Routes that reach no record of an organisation through the caller's session, and what guards them instead. */
export const OUTSIDE: Readonly<Record<string, string>> = {
  'POST /sessions': 'opens the session; its own tests hold it',
  'GET /sessions/current': 'shows the session that asks',
  'PUT /sessions/current/password': 'changes the password of the person whose session asks',
  'DELETE /sessions/current': 'ends the session that asks',
  'GET /replies/{purpose}': 'a signed token names the visit; its own tests hold it',
  'POST /replies/{purpose}': 'a signed token names the visit; its own tests hold it',
  'POST /lab-orders': 'crosses to another organisation through the exchange; its own tests hold both sides',
  'GET /lab-orders/{id}': 'crosses to another organisation through the exchange; its own tests hold both sides',
  'POST /lab-orders/{id}/actions':
    'crosses to another organisation through the exchange; its own tests hold both sides',
  'GET /caught-mail': 'there only in the demonstration, which has one organisation',
  'GET /demo/clock': 'there only in the demonstration, which has one organisation',
  'PUT /demo/clock': 'there only in the demonstration, which has one organisation',
};
