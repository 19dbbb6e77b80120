// Lets a thread of the tests run our TypeScript as it is: Node 20 reads none, and a build would have to be kept fresh.
import { register } from 'node:module';

register('./sources-hooks.mjs', import.meta.url);
