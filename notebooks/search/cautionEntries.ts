import { blockTitle } from '../blockChoices.ts';
import type { StepwellDocument } from '../document.ts';
import { generalCautions } from '../generalCautions.ts';
import { proseWords } from './proseWords.ts';
import type { SearchEntry } from './searchEntry.ts';

/** Address of the cautions before any setting, without its #. */
export const cautionsAddress = '/cautions';

/** Beginnings of words that ask for safety in general, and so for all cautions. */
const ofAll = ['safe', 'danger', 'hazard', 'risk', 'injur', 'caution', 'warn', 'accident', 'protect'];

/** Beginnings of words by which people ask for a caution, by what the caution is about. */
export const cautionCalls: Readonly<Record<string, readonly string[]>> = {
  'Class 4 laser.': [
    ...['class 4', 'class four', 'class iv', 'laser class', 'eye', 'goggle', 'glasses', 'spectacles'],
    ...['skin', 'blind', 'burn', 'fire', 'flame', 'ignit', 'scattered', 'interlock', 'iec 60825', 'mpe'],
  ],
  'Aligning.': ['eyewear', 'eye protection', 'goggle', 'glasses', 'spectacles', 'viewer card'],
  'Taking the plate out': ['plate out', 'taking the plate', 'remove the plate'],
  Reflections: ['reflection', 'stray', 'glare', 'eye', 'goggle', 'glasses'],
  'X-rays.': ['x ray', 'xray', 'radiation', 'dosimet', 'shield', 'ionis', 'ioniz'],
  'Fume and nanoparticles': [
    ...['fume', 'smoke', 'dust', 'nanoparticle', 'extraction', 'vapour', 'vapor', 'toxic'],
    ...['poison', 'inhal', 'breath', 'metal fever'],
  ],
  'Optics can be damaged:': ['damaged', 'broken', 'cracked'],
  'Medical or food use.': ['medical', 'implant', 'food', 'biocompat', 'patient'],
};

/** The cautions before any setting, then those in the pages, each once although some stand on every page. */
export function cautionEntries(documents: readonly StepwellDocument[]): readonly SearchEntry[] {
  return [...generalCautions.map(generalEntry), ...blockEntries(documents)];
}

/** Keys of the cautions before any setting that what was typed asks for; `typed` small, its words parted by one space. */
export function cautionsAsked(typed: string): readonly string[] {
  const asks = (beginning: string) => ` ${typed}`.includes(` ${beginning}`);
  const general = ofAll.some(asks);
  return generalCautions
    .filter(([about]) => general || (cautionCalls[about] ?? []).some(asks))
    .map(([about]) => keyOf(about));
}

const keyOf = (about: string) => `caution ${about}`;

function generalEntry([about, text]: readonly [string, string]): SearchEntry {
  return {
    key: keyOf(about),
    kind: 'caution',
    name: about.replace(/[.:]$/, ''),
    beside: 'before any setting',
    also: [...ofAll, ...(cautionCalls[about] ?? [])].join(' '),
    about: text,
    to: cautionsAddress,
  };
}

function blockEntries(documents: readonly StepwellDocument[]): SearchEntry[] {
  const entries = new Map<string, SearchEntry>();
  for (const { id, title, blocks } of documents)
    for (const block of blocks) {
      if (block.kind !== 'caution') continue;
      const name = blockTitle(id, block);
      const known = entries.get(`${block.id} ${name}`);
      entries.set(
        `${block.id} ${name}`,
        known
          ? { ...known, beside: 'caution on many pages' }
          : {
              key: `${id}/${block.id}`,
              kind: 'caution',
              name,
              beside: `caution in ‘${title}’`,
              also: block.id.replaceAll('-', ' '),
              about: proseWords(block.prose),
              to: `${id}/${block.id}`,
            },
      );
    }
  return [...entries.values()];
}
