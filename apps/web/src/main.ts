import { z } from 'zod';

// Schemas are interpreted, not compiled: the content security policy refuses code made from text, and the library's mere
// probe for it counts as a breach. Each schema reads this when it is made, so everything else is fetched afterwards.
z.config({ jitless: true });
await import('./app.js');
