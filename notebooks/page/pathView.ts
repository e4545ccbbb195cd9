import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { rayleighLength, workpieceZ } from '../../lib/design/focus.ts';
import { type FocusInside, focusInside } from '../../lib/design/insideExpander.ts';
import { wavelength } from '../../lib/design/laser.ts';
import { focalLength } from '../../lib/design/lens.ts';
import { apertureDiameter, raised, stepDiameter, stop } from '../../lib/design/plate.ts';
import { usedBeamDiameter } from '../../lib/design/rawBeam.ts';
import { hasValue, type Outcome } from '../../lib/graph/outcome.ts';
import type { FileInput, ListInput, Quantity } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { elementOf, inputCounts, type PathElementName, pathElements } from '../beamPathInputs.ts';
import { inputForFile, measuredFiles, readMeasuredFile } from '../measuredFiles.ts';
import { addProfileFiles, type GivenFile } from '../profileFiles.ts';
import { sliderSpans } from '../sliderSpans.ts';
import { createBeamPath } from './beamPath.ts';
import type { PageContext } from './context.ts';
import { createInputPanel, type InputPanel, type PanelActions } from './controls/inputPanel.ts';
import { element } from './element.ts';
import type { Live } from './live.ts';
import { renderOwnParts } from './ownPartsView.ts';
import { marksOf } from './requirementMarks.ts';
import { watchAll } from './watchAll.ts';

const drawn = [
  wavelength,
  usedBeamDiameter,
  plateBeamDiameter,
  focusInside,
  stepDiameter,
  stop,
  apertureDiameter,
  raised,
  focalLength,
  workpieceZ,
  rayleighLength,
] as const;

/** The beam path on the page. */
export interface BeamPathView {
  readonly drawing: HTMLElement;
  readonly inputs: HTMLElement;
  /** True where the input has a field that counts at present. */
  holds(id: string): boolean;
  /** Chooses the element of that input and gives its field the focus. */
  bring(id: string): void;
}

/** The beam-path drawing, and the inputs of the chosen element (below it, or beside the text where there is room). */
export function renderBeamPath(
  context: PageContext,
  stops: (() => void)[],
  first: PathElementName,
): BeamPathView {
  const { document } = context;
  const place = document.createElement('div');
  place.className = 'path-inputs';
  const tabs = element(document, 'div', {
    class: 'path-tabs',
    role: 'group',
    'aria-label': 'Element of the beam path',
  });
  const body = element(document, 'div');
  place.append(tabs, body);
  const panels = new Map<PathElementName, InputPanel>();
  const choose = (name: PathElementName) => {
    let panel = panels.get(name);
    if (!panel) {
      panel = renderPanel(context, pathElements[name].heading, pathElements[name].inputs, stops);
      renderOwnParts(context, name, panel.element, stops);
      panels.set(name, panel);
    }
    body.replaceChildren(panel.element);
    path.choose(name);
    for (const tab of tabs.children)
      tab.setAttribute('aria-pressed', String((tab as HTMLElement).dataset['element'] === name));
  };
  for (const name of Object.keys(pathElements) as PathElementName[]) {
    const tab = element(document, 'button', { type: 'button', class: 'plain', 'data-element': name }, name);
    tab.addEventListener('click', () => choose(name));
    tabs.append(tab);
  }
  const path = createBeamPath(document, choose);
  watchAll(context, drawn, stops, {
    pending: () => {},
    settled: () => {},
    changed: (outcomeOf) => path.update(drawnValues(outcomeOf)),
  });
  choose(first);
  return {
    drawing: path.element,
    inputs: place,
    holds: (id) => elementOf(id) !== undefined && inputCounts(id, context.live.state().inputs),
    bring: (id) => {
      const name = elementOf(id);
      if (!name) return;
      choose(name);
      panels.get(name)!.fields.get(id)!.focus();
    },
  };
}

/** What the drawing shows of the design. */
export function drawnValues(outcomeOf: (quantity: Quantity) => Outcome) {
  const show = (quantity: Quantity) => shownValue(quantity, outcomeOf(quantity));
  const value = <T>(quantity: Quantity): T | undefined => {
    const outcome = outcomeOf(quantity);
    return hasValue(outcome) ? (outcome.value as T) : undefined;
  };
  const open = value<string>(stop) === 'open';
  return {
    rawDiameter: value<number>(usedBeamDiameter),
    plateDiameter: value<number>(plateBeamDiameter),
    stepDiameter: value<number>(stepDiameter)!,
    stopDiameter: open ? undefined : value<number>(apertureDiameter),
    raised: value<'centre' | 'ring'>(raised)!,
    z: value<number>(workpieceZ)!,
    rayleighLength: value<number>(rayleighLength) ?? 1e-4,
    focusInside: value<FocusInside>(focusInside) === 'focus',
    labels: {
      laser: `${show(wavelength)}, beam ${show(usedBeamDiameter)}`,
      expander: `to ${show(plateBeamDiameter)}`,
      plate: `step ${show(stepDiameter)}, ${open ? 'no stop' : `stop ${show(apertureDiameter)}`}`,
      lens: `f = ${show(focalLength)}`,
      workpiece: `z = ${show(workpieceZ)}`,
    },
  };
}

/** What every panel does with what a person sets. */
export function panelActions({ live, drafts }: Pick<PageContext, 'live' | 'drafts'>): PanelActions {
  return {
    drafts,
    set: (patch, { final }) => live.set(patch, { final }),
    takeFiles: async (input, files) => {
      const given = await Promise.all(
        files.map(async (file) => ({ name: file.name, bytes: await bytesOf(file) })),
      );
      const { inputs } = live.state();
      const [{ bytes, name }] = given as [GivenFile];
      live.set(
        input.kind === 'list'
          ? addProfileFiles(given, inputs)
          : readMeasuredFile(input.id, bytes, name, inputs),
      );
    },
    accept: (input) => measuredFiles[fileId(input)]?.accept,
    pastes: (input) => measuredFiles[fileId(input)]?.table ?? false,
  };
}

/** Id of the input that takes the file: of a list, its first. */
function fileId(input: FileInput | ListInput): string {
  return input.kind === 'list' ? input.of[0]!.id : input.id;
}

async function bytesOf(file: File): Promise<Uint8Array> {
  return new Uint8Array(await file.arrayBuffer());
}

/** A panel of inputs that follows the live design. */
export function renderPanel(
  context: PageContext,
  heading: string,
  inputs: readonly Quantity[],
  stops: (() => void)[],
): InputPanel {
  const { live } = context;
  const panel = createInputPanel(context.document, heading, inputs as never, panelActions(context));
  const showCounting = () => {
    const values = live.state().inputs;
    for (const input of inputs) panel.setShown(input.id, inputCounts(input.id, values));
  };
  const marks = marksOf(context.document, live);
  for (const input of inputs) {
    const field = panel.fields.get(input.id)!;
    const label = field.element.querySelector<HTMLElement>('.field-label')!;
    stops.push(
      live.watch(input, {
        changed: (outcome) => {
          if (hasValue(outcome)) field.update(outcome.value as never);
          marks.show(label, input, outcome);
        },
      }),
    );
  }
  for (const [id, field] of panel.fields) {
    const span = sliderSpans[id];
    if (!span || !field.respan) continue;
    const changed = (outcome: Outcome<{ readonly low: number; readonly high: number }>) => {
      if (hasValue(outcome)) field.respan!(outcome.value.low, outcome.value.high);
    };
    stops.push(live.watch(span, { changed }));
  }
  // A missing result marks the input that it names.
  if (context.result) {
    stops.push(
      live.watch(context.result, {
        changed: (outcome) => {
          const problem = hasValue(outcome) ? undefined : outcome.problem;
          for (const [id, field] of panel.fields)
            field.explain(problem?.parts.input === id ? problem.message : undefined);
        },
      }),
    );
  }
  stops.push(live.onState(showCounting));
  stops.push(context.drafts.onChange((id) => panel.fields.get(id)?.recall?.()));
  showCounting();
  return panel;
}

/** Reads a beam image or a caustic on the start page and takes it as the source. */
export async function openMeasuredFile(live: Live, file: File): Promise<void> {
  const bytes = await bytesOf(file);
  live.set(readMeasuredFile(inputForFile(bytes), bytes, file.name, live.state().inputs));
}
