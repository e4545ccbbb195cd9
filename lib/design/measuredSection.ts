import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { smoothed } from '../measured/grooveEdges.ts';
import { type LevelledSection, levelSection } from '../measured/sectionLevel.ts';
import { Problem } from '../problem.ts';
import { type GrooveShape, shapeOf } from '../process/grooveShape.ts';
import { namingInput } from './namingInput.ts';
import { sectionFile } from './sectionFile.ts';

/** The problem of a comparison without a measured cross-section. */
function noSection(): Problem {
  return new Problem(
    'absent',
    'No measured cross-section has been given yet: choose a table or paste it, as in "x (µm); height (nm)".',
    { input: sectionFile.id },
  );
}

export const sectionPlaces = derived({
  id: 'groove.sectionPlaces',
  name: 'places in the measured cross-section',
  symbol: 'n_\\text{m}',
  unit: '1',
  about: 'Places across the groove in the table that was given, whether or not a groove is found in it.',
  from: { table: sectionFile },
  compute: ({ table }) => {
    if (table === null) throw noSection();
    return table.position.length;
  },
  formula: 'n',
  source: 'definition',
});

export const measuredSection = derived({
  id: 'groove.measuredSection',
  name: 'measured groove below its surface',
  symbol: 'd_\\text{m}(y)',
  unit: 'none',
  about:
    'The measured cross-section about the middle of its groove, levelled by a straight line through the surface on both sides: depths, the scatter of the surface as noise, what was taken for surface, which way the values count, and what lies above the surface.',
  from: { table: sectionFile },
  compute: ({ table }): LevelledSection => {
    if (table === null) throw noSection();
    return namingInput(sectionFile.id, () => levelSection(table));
  },
  shownAs: ({ position, noise }) => `${position.length} places, noise ${formatReadable(noise, 'm', 'nm', 2)}`,
  formula: 'h(y)-(a+b\\,y)',
  source: 'definition',
});

export const measuredNoise = derived({
  id: 'groove.measuredNoise',
  name: 'scatter of the measured surface',
  symbol: '\\sigma_\\text{m}',
  unit: 'm',
  display: 'nm',
  digits: 2,
  about:
    'Standard deviation of the heights of the surface beside the groove about the line through it, from the median of their distances; not less than the rounding of the table.',
  from: { section: measuredSection },
  compute: ({ section }) => section.noise,
  formula: '1.483\\,\\text{median}|h-(a+b\\,y)|',
  source: 'definition',
});

/** Part of the groove’s samples over which a running median takes spikes off before it is measured. */
const spikePart = 0.03;

export const measuredGrooveShape = derived({
  id: 'groove.measuredGrooveShape',
  name: 'measured groove in numbers',
  symbol: '\\text{shape}_\\text{m}',
  unit: 'none',
  about:
    'Depth, widths and wall angle of the measured groove, read like those of a computed one, from a running median over 6\u202f% of its samples, five at least.',
  from: { section: measuredSection },
  compute: ({ section: { position, depth, noise } }): GrooveShape => {
    const inside = depth.filter((d) => d > 3 * noise).length;
    const half = Math.max(2, Math.round(spikePart * inside));
    const shape = shapeOf({ y: position, depth: smoothed(depth, half) });
    if (shape !== undefined) return shape;
    throw new Problem('absent', 'The measured cross-section has no depth. Give one of a groove.', {
      input: sectionFile.id,
    });
  },
  shownAs: ({ depth, topWidth }) =>
    `${formatReadable(depth, 'm', 'um', 3)} deep, ${formatReadable(topWidth, 'm', 'um', 3)} wide`,
  formula: 'd_\\text{m}(y)',
  source: 'definition',
});
