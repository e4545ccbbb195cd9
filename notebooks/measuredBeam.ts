import { beamImagePitch, measuredBeam } from '../lib/design/laser.ts';
import { imagePreview } from '../lib/design/measured.ts';
import { beamSource } from '../lib/design/rawBeam.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { type MeasuredBeam, spoilingNotes } from '../lib/measured/measuredBeam.ts';
import { largest } from './columns.ts';
import { type Block, type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { imageNotes, imageSaid, imageWarning } from './measuredSentences.ts';
import { prose } from './prose.ts';

const when = { choice: beamSource, is: 'measured' } as const;

/** Ellipse with the measured diameters, in millimetres from the upper left corner of the picture, y downwards. */
function ellipse(beam: MeasuredBeam): SeriesSpec {
  const count = 97;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const t = (2 * Math.PI * i) / (count - 1);
    const along = (beam.diameterX / 2) * Math.cos(t);
    const across = (beam.diameterY / 2) * Math.sin(t);
    x[i] = (beam.centroid.x + along * Math.cos(beam.angle) - across * Math.sin(beam.angle)) * 1e3;
    y[i] = (beam.centroid.y + along * Math.sin(beam.angle) + across * Math.cos(beam.angle)) * 1e3;
  }
  return { label: 'second-moment diameters', role: 'second', x, y };
}

const imageFigure = figure({
  id: 'beam-image',
  when,
  needs: [measuredBeam],
  shape: 'tall',
  from: { preview: imagePreview, beam: measuredBeam, pitch: beamImagePitch },
  view: ({ preview, beam, pitch }): FigureSpec => {
    // The values stand for blocks of pixels: the frame goes from the middle of the first to the middle of the last.
    const block = preview.block * pitch * 1e3;
    const span = (count: number): [number, number] => [0.5 * block, (count - 0.5) * block];
    const [top, bottom] = span(preview.rows);
    // A picture in a file stands without the warning above it.
    const doubt =
      spoilingNotes(beam).length > 0 ? ' The image is saturated or clipped: these numbers are doubtful.' : '';
    const show = (length: number) => formatQuantity(length, 'm', 'mm');
    return {
      title: 'The measured beam',
      x: { label: 'across the image', unit: 'mm', domain: span(preview.columns) },
      // Rows count downwards, as cameras do and as the angle is told.
      y: { label: 'down the image', unit: 'mm', domain: [bottom, top] },
      equalScale: true,
      series: [ellipse(beam)],
      map: {
        ...preview,
        range: [Math.min(0, beam.background.level), largest(preview.values)],
        label: 'grey value',
        unit: 'counts',
      },
      summary: `The beam lies ${show(beam.centroid.x)} from the left and ${show(beam.centroid.y)} from the top of the image and is ${show(beam.diameterX)} by ${show(beam.diameterY)} wide (second moments, background subtracted).${doubt}`,
    };
  },
});

/** The measured beam in the matching document, shown while the beam is a measured one. */
export const measuredBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'measured',
    when,
    prose: prose`
      ## The beam as measured

      ${imageSaid}
    `,
  },
  // Empty, and then not shown, where there is nothing to warn of.
  {
    kind: 'caution',
    id: 'measured-warning',
    when,
    needs: [measuredBeam],
    prose: prose`${imageWarning}`,
  },
  { kind: 'prose', id: 'measured-notes', when, needs: [measuredBeam], prose: prose`${imageNotes}` },
  imageFigure,
];
