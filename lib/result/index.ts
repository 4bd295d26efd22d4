/**
 * Expected failure as a value. A domain function returns every issue it finds, not the first.
 * A bug still throws.
 */

/** How much an issue weighs: `stop` refuses the change, `warn` is shown and kept. */
export type Severity = 'stop' | 'warn';

/** A record an issue speaks about, so that a page can link to it. */
export interface Subject {
  readonly kind: string;
  readonly id: string;
  readonly name: string;
}

/**
 * One thing that is wrong, told to a person.
 * `message` says what, where and why; `fix` is one thing to do about it.
 */
export interface Issue {
  /** Stable, kebab-case, for tests and programs: `task-longer-than-any-session`. */
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly fix: string;
  /** Where in the input: `['effort', 'low']`. Empty when it is about the whole record. */
  readonly path: readonly (string | number)[];
  /** The records named in the message. */
  readonly subjects: readonly Subject[];
}

export type Result<T, E = readonly Issue[]> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E };

export function ok<T>(value: T): Result<T, never> {
  return { ok: true, value };
}

export function fail<E>(error: E): Result<never, E> {
  return { ok: false, error };
}

/** Fills in what an issue seldom needs. @example issue('no-name', 'The part has no name.', 'Type a name.') */
export function issue(
  code: string,
  message: string,
  fix: string,
  more: Partial<Pick<Issue, 'severity' | 'path' | 'subjects'>> = {},
): Issue {
  return { code, message, fix, severity: 'stop', path: [], subjects: [], ...more };
}

/** The value, or a throw: for places where failure would be a bug (seeds, tests). */
export function unwrap<T>(result: Result<T, unknown>): T {
  if (result.ok) return result.value;
  throw new Error(`Expected a value, got: ${JSON.stringify(result.error)}`);
}
