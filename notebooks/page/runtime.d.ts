/** The few public parts of @observablehq/runtime 6 that are used here; the package brings no types. */
declare module '@observablehq/runtime' {
  export interface Observer {
    pending?(): void;
    fulfilled?(value: unknown, name?: string): void;
    rejected?(error: Error, name?: string): void;
  }
  export interface Variable {
    define(name: string | null, inputs: readonly string[], definition: unknown): Variable;
    delete(): void;
  }
  export interface Module {
    variable(observer?: Observer | true): Variable;
  }
  export class Runtime {
    constructor(builtins?: Record<string, unknown> | null, global?: (name: string) => unknown);
    module(): Module;
    dispose(): void;
    _computeSoon(): Promise<void>;
    _computeNow(): Promise<void>;
  }
}
