/** What an error leads to, unless it leads to the right option: then it makes no difference in this design. */
export function otherThan<T extends string>(right: T, answer: T): T | undefined {
  return answer === right ? undefined : answer;
}
