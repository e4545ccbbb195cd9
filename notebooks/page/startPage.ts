import { generalCautions } from '../generalCautions.ts';
import { acceptDrops } from './controls/fileField.ts';
import { element } from './element.ts';
import { createOpticalTable, type TablePlace } from './opticalTable.ts';

/** What the three doors of the start page lead to. */
export interface StartDoors {
  /** A camera image or the table of a caustic was chosen or dropped. */
  onMeasured(file: File): void;
  onPlate(): void;
  onExample(): void;
  /** The line about use without network, where there is one. */
  readonly takenAlong?: HTMLElement;
}

/** Documents on the optical table; those without an address come later. */
const places: readonly TablePlace[] = [
  { name: 'Matching', about: 'beam, step and stop', at: [68, 57], href: '#matching' },
  { name: 'Through the focus', about: 'which plane to use', at: [30.5, 57], href: '#through-focus' },
  { name: 'Threshold', about: 'fluence and marks', at: [5.5, 44.5], href: '#threshold' },
  { name: 'Ripples', about: 'period and window', at: [13, 44.5], href: '#ripples' },
  { name: 'Throughput', about: 'fields, heat and time', at: [20.5, 44.5], href: '#throughput' },
  { name: 'Grooves and engraving', about: 'depth, walls and floor', at: [9, 58], href: '#grooves' },
  { name: 'Scale-up', about: 'up to square metres', at: [17, 58], href: '#scale-up' },
  { name: 'What if', about: 'alternatives side by side', at: [50, 57], href: '#what-if' },
  { name: 'Own pages', about: 'composed by you', at: [50, 44.5], href: '#own-pages' },
  { name: 'Write-up', about: 'the reasons, ready to hand in', at: [59, 57], href: '#write-up' },
  { name: 'Set-up sheet', about: 'one page for the table', at: [41, 57], href: '#set-up-sheet' },
];

/** The page before any design: where the documents are, three ways in, and what can hurt. */
export function renderStartPage(document: Document, doors: StartDoors): HTMLElement {
  const lead = element(
    document,
    'p',
    { class: 'lead' },
    'A plate with a single round step can turn the focus of a Gaussian laser beam into a flat-top or a ring. These pages work out which beam, plate, lens and plane do it, and what the spot then does to a surface.',
  );
  const cautionsBelow = createCautions(document);
  return element(
    document,
    'main',
    { class: 'sheet start' },
    element(document, 'h1', {}, 'From laser to workpiece'),
    lead,
    createPointer(document, cautionsBelow),
    createDoors(document, doors),
    createWays(document),
    createOpticalTable(document, places),
    doors.takenAlong ?? '',
    cautionsBelow,
  );
}

/** Stands before the doors, since the cautions themselves are long: what hurts first, and the way to all of them. */
function createPointer(document: Document, cautionsBelow: HTMLElement): HTMLElement {
  const way = element(
    document,
    'button',
    { type: 'button', class: 'sets-link' },
    'Read the cautions before any setting',
  );
  way.addEventListener('click', () => {
    cautionsBelow.scrollIntoView();
    cautionsBelow.querySelector<HTMLElement>('h2')!.focus({ preventScroll: true });
  });
  return element(
    document,
    'p',
    { class: 'caution start-pointer' },
    element(document, 'strong', {}, 'Class 4 laser.'),
    ' It injures eyes and skin, and taking the plate out raises the peak fluence. ',
    way,
    '.',
  );
}

function createDoors(document: Document, { onMeasured, onPlate, onExample }: StartDoors): HTMLElement {
  const plate = door(
    document,
    'I have a plate',
    'Type its step diameter and height, and find the beam that suits it.',
  );
  const example = door(
    document,
    'Show me the example',
    'A 10\u00a0mm step of half a wave, a 10\u00a0mm beam at 1030\u00a0nm, a lens of 100\u00a0mm.',
  );
  plate.addEventListener('click', onPlate);
  example.addEventListener('click', onExample);
  return element(
    document,
    'div',
    { class: 'doors', role: 'group', 'aria-label': 'Where to begin' },
    measuredDoor(document, onMeasured),
    plate,
    example,
  );
}

/** For those who come to learn or to teach rather than with a beam of their own. */
function createWays(document: Document): HTMLElement {
  const link = (to: string, text: string) => element(document, 'a', { href: `#${to}` }, text);
  return element(
    document,
    'p',
    { class: 'start-ways' },
    'Teaching, new in the lab, or writing a design up? ',
    link('reading', 'Three ways through all pages'),
    ' say where to begin; ',
    link('words', 'words and symbols'),
    ' are explained in one place.',
  );
}

function door(document: Document, title: string, about: string): HTMLButtonElement {
  return element(
    document,
    'button',
    { type: 'button', class: 'door' },
    element(document, 'span', { class: 'door-title' }, title),
    ' ',
    element(document, 'span', { class: 'door-about' }, about),
  );
}

function measuredDoor(document: Document, onMeasured: (file: File) => void): HTMLElement {
  const picker = element(document, 'input', {
    type: 'file',
    class: 'off-screen',
    accept: '.png,.tif,.tiff,.csv,.txt,.tsv,.dat,image/png,image/tiff',
  });
  const label = element(
    document,
    'label',
    { class: 'door' },
    picker,
    element(document, 'span', { class: 'door-title' }, 'I have a beam image'),
    ' ',
    element(
      document,
      'span',
      { class: 'door-about' },
      'Choose or drop a camera image (PNG, TIFF or a table of grey values) or the table of a caustic to measure the raw beam.',
    ),
  );
  picker.addEventListener('change', () => {
    const file = picker.files?.[0];
    picker.value = '';
    if (file) onMeasured(file);
  });
  acceptDrops(label, onMeasured);
  return label;
}

/** The cautions before any setting, all of them. */
export function createCautions(document: Document): HTMLElement {
  const items = generalCautions.map(([about, text]) =>
    element(document, 'li', {}, element(document, 'strong', {}, about), ` ${text}`),
  );
  return element(
    document,
    'section',
    { class: 'caution start-cautions', 'data-within': 'cautions', 'aria-labelledby': 'cautions-heading' },
    element(document, 'h2', { id: 'cautions-heading', tabindex: -1 }, 'Before any setting'),
    element(
      document,
      'p',
      { class: 'start-sources' },
      '“Memory” behind a source means that it was not at hand when this was written. Look it up before you rely on it: ',
      element(document, 'a', { href: '#words/source-marks' }, 'how well sources are known'),
      '.',
    ),
    element(document, 'ul', {}, ...items),
  );
}
