import {
  cassieAngle,
  flatAngle,
  rippleDepth,
  rippleRoughness,
  solidFraction,
  wenzelAngle,
} from '../lib/design/rippleUses.ts';
import type { Block } from './document.ts';
import { prose } from './prose.ts';
import { wettingSaid } from './rippleUsesSentences.ts';

/** What ripples are for, as far as anybody knows. */
export const usesBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'uses',
    prose: prose`
      ## What ripples are for

      **Water.** Ripples alone rarely shed water; surfaces that do mostly carry coarser structures as well, and a coating or a layer of what has settled from the air. Steel fresh from the laser often wets, and turns over days to weeks as it lies in air (common practice; A.-M. Kietzig et al., Langmuir 25, 4821 (2009), memory): give date and storage with every **contact angle**: the angle inside a drop at its edge, small where water spreads and above 90° where it draws together. ${wettingSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'uses-controls',
    heading: 'Estimates of a contact angle',
    inputs: [rippleDepth, flatAngle, solidFraction],
  },
  {
    kind: 'table',
    id: 'uses-table',
    table: {
      caption: 'Estimates, not predictions',
      columns: ['', 'value'],
      rows: [
        ['true over flat area of a sinusoidal profile (roughness factor)', rippleRoughness],
        ['contact angle with the valleys filled, Wenzel', wenzelAngle],
        ['contact angle with air in the valleys, Cassie and Baxter', cassieAngle],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'other-uses',
    prose: prose`
      **Colour.** Ridges a wavelength apart are a grating: in directed light they show colours that change with the angle (B. Dusser et al., Opt. Express 18, 2913 (2010), memory). Colour is also how an uneven field shows first.

      **Friction and wear.** Less friction has been reported on rippled steel and titanium in some lubricants and not in others (J. Bonse et al., Appl. Phys. A 117, 103 (2014), memory); oxide made by the pulses may do as much as the ridges.

      **Cells.** Some cells grow along ridges (E. Rebollar et al., Biomaterials 29, 1796 (2008), on polymer, memory). Such studies are research on one cell and one surface, and carry over to no other.
    `,
  },
  {
    kind: 'caution',
    id: 'medical-and-food',
    prose: prose`**Medical or food use.** Nothing on this page says that a rippled surface is fit for the body or for food. That is for the responsible bodies to judge, on proof of the finished part, cleaned and aged as it will be used.`,
  },
];
