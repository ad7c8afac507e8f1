/**
 * The outcome of reading or changing something that a person gave us: a value, or the reason why
 * there is none. `R` is a tagged reason that a field or a message can put into words.
 */
export type Result<T, R> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: R }

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value })

export const refused = <R>(reason: R): { readonly ok: false; readonly reason: R } => ({ ok: false, reason })
