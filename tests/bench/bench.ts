import { benchFamily } from './familyBench.ts';
import { benchGroove } from './grooveBench.ts';
import { benchLatency } from './latencyBench.ts';
import { benchMap } from './mapBench.ts';
import { benchPage } from './pageBench.ts';
import { benchProfile } from './profileBench.ts';
import { benchPulses } from './pulseBench.ts';
import { benchRipples } from './rippleBench.ts';
import { printRow, printTitle } from './timing.ts';
import { benchVary } from './varyBench.ts';

/** Prints how long the slow things take: `npm run bench`. Milliseconds; p50 is the median. */
printTitle();
for (const row of benchProfile()) printRow(row);
for (const row of benchMap()) printRow(row);
for (const row of benchFamily()) printRow(row);
for (const row of benchRipples()) printRow(row);
for (const row of benchPulses()) printRow(row);
for (const row of benchVary()) printRow(row);
for (const row of await benchPage()) printRow(row);
for (const row of await benchLatency()) printRow(row);
for (const row of await benchGroove()) printRow(row);
