// A site as the program uses it: its settings, and what its local codes mean. Types only.

/** What a local code stands for, and which map says so. */
export interface Mapping {
  readonly system: string;
  readonly code: string;
  readonly display?: string;
  /** `url|version` of the ConceptMap. */
  readonly map: string;
}

/** By `system|code`. */
export type CodeMap = ReadonlyMap<string, Mapping>;

export interface Performer {
  readonly reference: string;
  readonly display?: string;
}

export interface SiteSetup {
  readonly name: string;
  readonly guideline?: string;
  readonly language?: string;
  /** IANA name; turned into offsets by the shell. */
  readonly timeZone?: string;
  readonly pressureUnit?: 'mm[Hg]' | 'kPa';
  readonly strict: boolean;
  /** What the level served here can do, and what the next one is called. */
  readonly level?: { readonly can: readonly string[]; readonly next?: string };
  /** To whom a referral goes, by referral level. */
  readonly performers: ReadonlyMap<string, Performer>;
  readonly codes: CodeMap;
  readonly units: CodeMap;
  readonly stripTexts: CodeMap;
}
