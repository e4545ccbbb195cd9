/** How widths and walls of every groove, computed or measured, are read: as {@link file://../process/grooveShape.ts} does. */
export const topIs =
  'its walls continued from two fifths and a fifth of the depth; rings beside it that are less than half as deep do not count';
export const wallIs =
  'against the surface between a fifth and four fifths of the depth (from higher up where a ring comes before), mean of both walls: 90° is upright';
