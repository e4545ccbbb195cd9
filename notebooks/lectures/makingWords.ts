import type { Graph } from '../../lib/graph/graph.ts';
import { missingIn } from '../ownProse.ts';

/** What is wrong with the names of numbers in a text of a lecture, which would stand on the slide so; empty where nothing is. */
export function textWarning(graph: Graph, text: string): string {
  const missing = missingIn(graph, text);
  if (missing === '') return '';
  const end = missing.endsWith('?') ? '' : '.';
  return `${missing.charAt(0).toUpperCase()}${missing.slice(1)}${end} Until it is mended, this is said in its place.`;
}

/** What is wrong with the answers of a question, one a line; empty where nothing is. */
export function answersWarning(text: string): string {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  if (lines.length === 1)
    return 'One answer leaves no choice. Write another one below it, or none: then the question is an open one.';
  return '';
}
