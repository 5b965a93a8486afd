// An object under construction, member by member. Type only.

/** `T` while it is being built; hand it on as `T`. Members that are absent are never set: one spread per member is slower. */
export type Writable<T> = { -readonly [K in keyof T]: T[K] };
