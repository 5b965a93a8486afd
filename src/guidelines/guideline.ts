// The shape of a guideline: numbers with their citation, questions, and rules as data. Hands on types only.
import type { QualityRule } from './quality-rule.ts';

/** How a figure is known. Anything but `read` is shown as not verified against the publication. */
export type Known = 'read' | 'from-memory' | 'ours' | 'common-practice';

/**
 * Where a figure comes from.
 *
 * Source   ours: a value without a citation does not compile.
 */
export interface Citation {
  readonly publication: string;
  /** Section, table or recommendation number, as printed. */
  readonly section: string;
  readonly year: number;
  readonly known: Known;
  readonly note?: string;
}

export type Comparator = '>=' | '>' | '<=' | '<';

/** A clinical number: what it limits, in which unit (UCUM), and who says so. */
export interface Threshold {
  /** Stable, kebab-case, meaningful without numbers; the same name in the trace and in RULES.md. */
  readonly id: string;
  readonly comparator: Comparator;
  readonly value: number;
  /** UCUM. Strip grades use `{grade}`: 0 negative, 0.5 trace, 1 to 4. */
  readonly unit: string;
  /** The same limit as the publication prints it in another unit; used when the value was sent in that unit. */
  readonly alsoPrintedAs?: readonly { readonly value: number; readonly unit: string }[];
  readonly citation: Citation;
}

/** Either pressure reaching its own limit is enough. */
export interface PressureLimits {
  readonly systolic: Threshold;
  readonly diastolic: Threshold;
}

export const classifications = [
  // Leading one first: this order decides which class heads the answer.
  'eclampsia',
  'imminent-eclampsia',
  'hellp',
  'pre-eclampsia-severe-features',
  'superimposed-pre-eclampsia',
  'postpartum-pre-eclampsia',
  'severe-unconfirmed',
  'pre-eclampsia',
  'gestational-hypertension-severe-range',
  'postpartum-hypertension',
  'gestational-hypertension',
  'cannot-classify',
  'white-coat-hypertension',
  'chronic-hypertension',
  'hypertension-timing-unknown',
  'masked-hypertension',
  'raised-unconfirmed',
  'isolated-proteinuria',
  'transient-hypertension',
  'normotensive',
] as const;
export type Classification = (typeof classifications)[number];

export const urgencies = ['emergency', 'same-day', 'within-48-hours', 'within-7-days', 'routine'] as const;
/** Most urgent first. */
export type Urgency = (typeof urgencies)[number];

/** Part of a pregnancy a reading belongs to. A confirming pair lies inside one period. */
export type Period = 'before-20-weeks' | 'from-20-weeks' | 'after-birth' | 'unknown';

export type Analyte =
  | 'platelets'
  | 'creatinine'
  | 'alt'
  | 'ast'
  | 'ldh'
  | 'bilirubin'
  | 'haemoglobin'
  | 'urate'
  | 'fibrinogen'
  | 'sflt1-plgf-ratio'
  | 'plgf'
  | 'oxygen-saturation'
  | 'heart-rate'
  | 'respiratory-rate'
  | 'body-mass-index'
  | 'fundal-height'
  | 'urine-output'
  | 'hcg'
  | 'potassium'
  | 'magnesium'
  | 'urine-specific-gravity'
  | 'urine-ph';

export type SymptomId =
  | 'headache'
  | 'visual-disturbance'
  | 'epigastric-pain'
  | 'dyspnoea'
  | 'vomiting'
  | 'nausea'
  | 'chest-pain'
  | 'clonus'
  | 'hyperreflexia'
  | 'altered-mental-status'
  | 'coma'
  | 'seizure'
  | 'oliguria'
  | 'vaginal-bleeding'
  | 'abdominal-pain'
  | 'reduced-fetal-movement'
  | 'oedema'
  | 'pulmonary-oedema'
  | 'lung-crackles';

export type ConditionId =
  | 'chronic-hypertension'
  | 'gestational-hypertension'
  | 'pre-eclampsia'
  | 'pre-eclampsia-severe'
  | 'superimposed-pre-eclampsia'
  | 'hellp'
  | 'eclampsia'
  | 'postpartum-hypertension'
  | 'hypertension-in-pregnancy-unspecified'
  | 'white-coat-hypertension'
  | 'transient-hypertension'
  | 'raised-pressure-finding'
  | 'proteinuria'
  | 'history-of-pre-eclampsia'
  | 'history-of-eclampsia'
  | 'poor-obstetric-history'
  | 'family-history-of-pre-eclampsia'
  | 'chronic-kidney-disease'
  | 'diabetes'
  | 'gestational-diabetes'
  | 'systemic-lupus-erythematosus'
  | 'antiphospholipid-syndrome'
  | 'multiple-pregnancy'
  | 'assisted-conception'
  | 'obesity'
  | 'nulliparity'
  | 'advanced-maternal-age'
  | 'trophoblastic-disease'
  | 'fetal-growth-restriction'
  | 'fetal-death'
  | 'placental-abruption'
  | 'disseminated-intravascular-coagulation'
  | 'stroke'
  | 'epilepsy'
  | 'asthma'
  | 'heart-block'
  | 'heart-failure'
  | 'bradycardia'
  | 'depression'
  | 'urinary-tract-infection'
  | 'aspirin-allergy'
  | 'medicine-allergy'
  | 'active-bleeding'
  | 'peptic-ulcer'
  | 'pregnant'
  | 'post-partum-state'
  | 'miscarriage';

export type MedicineId =
  | 'labetalol'
  | 'nifedipine'
  | 'amlodipine'
  | 'nicardipine'
  | 'methyldopa'
  | 'hydralazine'
  | 'dihydralazine'
  | 'magnesium-sulfate'
  | 'calcium-gluconate'
  | 'aspirin'
  | 'calcium-supplement'
  | 'ace-inhibitor'
  | 'angiotensin-receptor-blocker'
  | 'renin-inhibitor'
  | 'neprilysin-inhibitor'
  | 'aldosterone-antagonist'
  | 'atenolol'
  | 'other-beta-blocker'
  | 'other-antihypertensive'
  | 'thiazide'
  | 'loop-diuretic'
  | 'statin'
  | 'nsaid'
  | 'ergometrine'
  | 'enalapril'
  | 'captopril'
  | 'sublingual-nifedipine';

/** One way in which an organ counts as involved. */
export type OrganCriterion =
  | {
      readonly id: string;
      readonly kind: 'laboratory';
      readonly organ: string;
      readonly analytes: readonly Analyte[];
      readonly limit: Threshold;
      /** Only for results taken from this gestational age on, and before that one. */
      readonly fromAge?: Threshold;
      readonly beforeAge?: Threshold;
      /** An adjunct: looked at when measured, never asked for. */
      readonly isAdjunct?: boolean;
      readonly unlessRecorded?: readonly ConditionId[];
    }
  | {
      readonly id: string;
      readonly kind: 'multiple-of-upper-limit';
      readonly organ: string;
      readonly analytes: readonly Analyte[];
      /** How many times the laboratory's upper limit; unit `1`. */
      readonly limit: Threshold;
      /** Upper limit used when the laboratory states none or an implausible one. */
      readonly assumedUpperLimit: Threshold;
      readonly plausibleUpperLimit: { readonly low: Threshold; readonly high: Threshold };
    }
  | {
      readonly id: string;
      readonly kind: 'multiple-of-baseline';
      readonly organ: string;
      readonly analytes: readonly Analyte[];
      readonly limit: Threshold;
      /** Recorded conditions that explain the change, so that it does not count. */
      readonly unlessRecorded: readonly ConditionId[];
    }
  | {
      readonly id: string;
      readonly kind: 'symptom';
      readonly organ: string;
      readonly symptoms: readonly SymptomId[];
      readonly citation: Citation;
    }
  | {
      readonly id: string;
      readonly kind: 'condition';
      readonly organ: string;
      readonly conditions: readonly ConditionId[];
      readonly citation: Citation;
    };

/** Which urine results count as significant protein. A result of a kind not listed decides nothing. */
export interface ProteinuriaCriteria {
  /** Grade that counts; absent: the strip decides nothing. */
  readonly strip?: Threshold;
  /** "Positive" without a grade: counts, or cannot tell. */
  readonly ungradedPositive: 'counts' | 'cannot-tell';
  /** From this grade up to the one that counts, the answer is open until a ratio is measured. */
  readonly stripAsksForRatio?: Threshold;
  /** Each published cut-off in its own unit; one met is enough. */
  readonly proteinCreatinineRatio: readonly Threshold[];
  readonly albuminCreatinineRatio: readonly Threshold[];
  readonly excretion24h: readonly Threshold[];
  /** Said beside a strip that counts here and not elsewhere. */
  readonly remark?: string;
}

/**
 * A question the engine can answer about a timeline: the name of a check, and the options it needs.
 * The options point at thresholds; the check holds no clinical number.
 */
export type QuestionCheck =
  | { readonly check: 'period-now'; readonly period: Period }
  | { readonly check: 'days-after-birth'; readonly from?: Threshold; readonly until?: Threshold }
  | {
      readonly check: 'pressure-raised-once';
      readonly limits: PressureLimits;
      readonly freshWithin: Threshold;
    }
  | { readonly check: 'pressure-raised-now'; readonly limits: PressureLimits; readonly period?: Period }
  | {
      readonly check: 'pressure-raised-open';
      readonly limits: PressureLimits;
      readonly confirmation: Confirmation;
    }
  | {
      readonly check: 'pressure-normal-now';
      readonly limits: PressureLimits;
      /** A pressure this much older than the newest urine or symptom says nothing of that contact. */
      readonly freshWithin: Threshold;
    }
  | {
      readonly check: 'pressure-confirmed';
      readonly limits: PressureLimits;
      readonly severe: PressureLimits;
      readonly period: Period;
      readonly confirmation: Confirmation;
      readonly severeConfirmation: SevereConfirmation;
      readonly dangerSymptoms: readonly SymptomId[];
    }
  | {
      readonly check: 'pressure-pair-stale';
      readonly limits: PressureLimits;
      readonly confirmation: Confirmation;
      readonly freshWithin: Threshold;
    }
  | {
      readonly check: 'pressure-settled';
      readonly limits: PressureLimits;
      readonly confirmation: Confirmation;
      readonly after: Threshold;
    }
  | {
      readonly check: 'pressure-transient';
      readonly limits: PressureLimits;
      readonly confirmation: Confirmation;
    }
  | {
      readonly check: 'severe-pressure-open';
      readonly limits: PressureLimits;
      readonly severeConfirmation: SevereConfirmation;
      readonly dangerSymptoms: readonly SymptomId[];
    }
  | {
      readonly check: 'severe-pressure-closed';
      readonly limits: PressureLimits;
      readonly severeConfirmation: SevereConfirmation;
      readonly dangerSymptoms: readonly SymptomId[];
    }
  | {
      readonly check: 'severe-pressure-confirmed';
      readonly limits: PressureLimits;
      readonly severeConfirmation: SevereConfirmation;
      readonly dangerSymptoms: readonly SymptomId[];
      readonly period: Period | 'any';
    }
  | {
      readonly check: 'severe-pressure-current';
      readonly limits: PressureLimits;
      readonly severeConfirmation: SevereConfirmation;
      readonly dangerSymptoms: readonly SymptomId[];
      readonly settledAfter: Threshold;
    }
  | {
      readonly check: 'unusable-pressure';
      readonly limits: PressureLimits;
      readonly severe: PressureLimits;
      readonly level: 'emergency' | 'same-day';
      readonly supersededAfter: Threshold;
      /** How long a fault of form is worth a repeat. */
      readonly freshWithin: Threshold;
    }
  | { readonly check: 'fetuses-reach'; readonly limit: Threshold }
  | { readonly check: 'urine-tested'; readonly freshWithin: Threshold }
  | {
      readonly check: 'blood-tested';
      /** One of each group is enough. */
      readonly groups: readonly (readonly Analyte[])[];
      readonly freshWithin: Threshold;
    }
  | {
      readonly check: 'pressure-control-lost';
      readonly limits: PressureLimits;
      readonly severeConfirmation: SevereConfirmation;
      readonly dangerSymptoms: readonly SymptomId[];
      /** The lower reading must lie at least this long before the severe one. */
      readonly earlierBy: Threshold;
    }
  | {
      readonly check: 'home-pressure';
      readonly limits: PressureLimits;
      readonly want: 'raised' | 'below';
      /** Asked only when no clinic reading was received. */
      readonly onlyWithoutClinic?: boolean;
      /** Asks what is on record: nothing received is "no", not an open question. */
      readonly whenNone?: 'not-met';
    }
  | {
      readonly check: 'laboratory-fall';
      readonly analyte: Analyte;
      /** Fall from the highest earlier value of this pregnancy, in percent. */
      readonly limit: Threshold;
      readonly freshWithin: Threshold;
    }
  | {
      readonly check: 'proteinuria';
      readonly criteria: ProteinuriaCriteria;
      /** `current`: the newest result decides. `since-raised`: any uncorrected positive since the pressure rose. */
      readonly span: 'current' | 'since-raised';
      /** Periods whose results count. */
      readonly periods: readonly Period[];
      readonly limits: PressureLimits;
      readonly lookBack: Threshold;
      readonly correctedWithin: Threshold;
      /** Required multiple of a positive baseline, for superimposed disease. */
      readonly newAgainstBaseline?: Threshold;
      /** Protein that cannot be compared with what was there before: open, or taken for new. */
      readonly whenNotCompared?: 'counts';
    }
  | {
      readonly check: 'organ-involvement';
      readonly criteria: readonly OrganCriterion[];
      readonly symptomsFreshWithin: Threshold;
      /** Periods whose results count. */
      readonly periods: readonly Period[];
      /** Results already beyond the limit before 20+0 weeks are not new. */
      readonly newOnset: boolean;
      /** A result older than this says nothing of today when it is not beyond the limit: the question is open again. */
      readonly negativeFreshWithin?: Threshold;
      /** A result older than this says nothing at all. */
      readonly freshWithin?: Threshold;
    }
  | { readonly check: 'hellp'; readonly definition: HellpDefinition; readonly within: Threshold }
  | {
      readonly check: 'symptom-present';
      readonly symptoms: readonly SymptomId[];
      readonly freshWithin: Threshold;
      /** Count only symptoms that arose in these periods. */
      readonly periods?: readonly Period[];
      /** A symptom that is over counts all the same (a seizure). */
      readonly evenWhenOver?: boolean;
      /** Events that are written down when they happen: silence is "not recorded", not an open question. */
      readonly whenUnasked?: 'not-recorded';
    }
  | {
      readonly check: 'condition-recorded';
      readonly conditions: readonly ConditionId[];
      readonly scope: 'active' | 'this-pregnancy' | 'ever';
    }
  | {
      readonly check: 'laboratory-reaches';
      readonly analyte: Analyte;
      readonly limit: Threshold;
      readonly freshWithin: Threshold;
    }
  | {
      /** Given within that time, or running; an order alone is neither. */
      readonly check: 'medicine-given';
      readonly medicines: readonly MedicineId[];
      readonly within: Threshold;
    }
  | {
      /** The newest value taken since one of the medicines was given, within the time that a dose counts. */
      readonly check: 'laboratory-on-medicine';
      readonly analyte: Analyte;
      readonly limit: Threshold;
      readonly medicines: readonly MedicineId[];
      readonly within: Threshold;
    }
  | {
      /** An order in force or closed within that time, or a dose without its time: it may have been given. */
      readonly check: 'medicine-perhaps-given';
      readonly medicines: readonly MedicineId[];
      readonly within: Threshold;
    }
  | {
      readonly check: 'medicine-active';
      readonly medicines: readonly MedicineId[];
      /** Count only medicines already active in this period. */
      readonly activeIn?: Period;
      /** Only medicines whose start is recorded. */
      readonly startKnown?: boolean;
      /** Doses given within that time count too; with `apart`, two of one medicine at least so far from each other. */
      readonly doses?: { readonly within: Threshold; readonly apart?: Threshold };
      /** A recorded reason other than pressure makes the medicine say nothing about pressure. */
      readonly otherIndications?: readonly ConditionId[];
    };

/** What makes two raised occasions a confirmed hypertension. */
export interface Confirmation {
  /** Shortest time between the two; absent: the publication names none, any later occasion confirms. */
  readonly minimumInterval?: Threshold;
  /** Judge visit averages, or single readings (a pair inside one visit). */
  readonly between: 'occasions' | 'readings';
  readonly sameArm: boolean;
  readonly citation: Citation;
}

export interface SevereConfirmation {
  readonly minimumInterval: Threshold;
  /** A severe reading is closed by one below the limits taken at least this long after it. */
  readonly closedAfter: Threshold;
  /** The repeat is due within this time. */
  readonly repeatWithin: Threshold;
}

export interface HellpDefinition {
  readonly tennessee: {
    readonly ldh: Threshold;
    readonly bilirubin: Threshold;
    readonly ast: Threshold;
    readonly platelets: Threshold;
  };
  readonly mississippi: readonly {
    readonly name: string;
    readonly platelets: Threshold;
    readonly transaminase: Threshold;
    readonly ldh: Threshold;
  }[];
}

export type Question = QuestionCheck & {
  readonly id: string;
  /** The question in plain words, as RULES.md and the trace print it. */
  readonly asks: string;
  readonly citation: Citation;
  /** What to measure or ask when the answer is "cannot tell". */
  readonly whenCannotTell?: Omission;
};

/** What is missing, in words, and until when it matters. */
export interface Omission {
  readonly id: string;
  readonly what: string;
  readonly how: string;
  /** How soon it is needed when the open question could change the class. */
  readonly by: Urgency;
}

/** all / any / none over question ids, or over classes already decided (`class:pre-eclampsia`). */
export type Need =
  | string
  | ({ readonly all: readonly Need[] } & Called)
  | ({ readonly any: readonly Need[] } & Called)
  | ({ readonly none: readonly Need[] } & Called);

/** What people call a state, where a table has no room to spell it out. */
interface Called {
  readonly called?: string;
}

export interface ClassRule {
  readonly id: string;
  readonly classification: Classification;
  readonly sentence: string;
  readonly appliesTo: string;
  readonly when: Need;
  /** Classes this one takes the place of when both hold. */
  readonly supersedes: readonly Classification[];
  readonly citation: Citation;
}

export interface UrgencyRule {
  readonly id: string;
  readonly urgency: Urgency;
  readonly sentence: string;
  readonly when: Need;
  readonly citation: Citation;
}

export type ActionKind =
  | 'repeat-pressure'
  | 'measure'
  | 'investigate'
  | 'refer'
  | 'before-transfer'
  | 'treatment-option'
  | 'medicine-safety'
  | 'prevention'
  | 'follow-up'
  | 'delivery-review'
  | 'after-birth'
  | 'long-term'
  | 'tell-the-woman'
  | 'measurement-quality';

/** Where a "repeat after / before" time starts counting. */
export type ClockStart = 'first-raised-occasion' | 'last-severe-reading';

export interface ActionRule {
  readonly id: string;
  readonly kind: ActionKind;
  readonly when: Need;
  /** Plain wording; `{time}` is replaced by the clock time when `clock` is given. */
  readonly sentence: string;
  /** Ascending; steps before transfer are done in this order. */
  readonly order: number;
  readonly clock?: {
    readonly from: ClockStart;
    readonly add: Threshold;
    readonly sense: 'after' | 'within';
    /** In place of the sentence when that time has come; with `{time}`. */
    readonly whenOver: string;
  };
  /** Only at sites that can do this; absent: anywhere. */
  readonly siteNeeds?: string;
  /** The numbers the sentence quotes, each with its own source. */
  readonly figures?: readonly Figure[];
  readonly citation: Citation;
}

/**
 * A number that a sentence quotes: one value, or a range up to `to`.
 * Sentences are made from figures; no clinical number is typed into prose.
 */
export interface Figure {
  readonly id: string;
  readonly value: number;
  readonly to?: number;
  /** UCUM. */
  readonly unit: string;
  readonly citation: Citation;
}

export type MedicineSeverity = 'avoid' | 'caution' | 'note';

/** What to say about a medicine in use or ordered. */
export interface MedicineRule {
  readonly id: string;
  readonly medicines: readonly MedicineId[];
  /** A product that also counts as one of these is passed over. */
  readonly except?: readonly MedicineId[];
  /** How it must be in the record; absent: in use or ordered. */
  readonly statuses?: readonly ('active' | 'ordered')[];
  /** A dose given counts for so long; absent: doses given do not count. */
  readonly givenWithin?: Threshold;
  /** The state of the woman. */
  readonly when: Need;
  /** At least one of these is on record and active. */
  readonly conditions?: readonly ConditionId[];
  /** Only medicines to which, or to whose class, an active allergy is on record. */
  readonly ofAllergy?: true;
  /** Another resource says that one of these is in use, given or ordered, the newest within that time. */
  readonly alongside?: {
    readonly medicines: readonly MedicineId[];
    /** `order-in-force`: an active order, which is no dose; `given` is never one. */
    readonly statuses: readonly ('active' | 'ordered' | 'given' | 'order-in-force')[];
    readonly within?: Threshold;
  };
  /** In use for longer than this. */
  readonly longerThan?: Threshold;
  readonly severity: MedicineSeverity;
  readonly sentence: string;
  /** Said, as a note, when the state of the woman cannot be told. */
  readonly whenCannotTell?: string;
  readonly figures?: readonly Figure[];
  readonly alternative?: { readonly sentence: string; readonly citation: Citation };
  readonly citation: Citation;
}

/** A drug the publications name for a state: a reference value, never an order. */
export interface TreatmentRule {
  readonly id: string;
  /** In words, with the route. */
  readonly medicine: string;
  readonly medicines: readonly MedicineId[];
  /** Other words under which a sentence may name it. */
  readonly alsoCalled?: readonly string[];
  readonly purpose: 'acute-pressure' | 'maintenance' | 'seizure';
  readonly when: Need;
  readonly dose: string;
  readonly figures: readonly Figure[];
  /** Among options of one purpose the lowest with nothing against it is offered first; absent: never first. */
  readonly rank?: number;
  readonly siteNeeds?: string;
  /** Reasons in the record to think twice: a condition, a medicine in use, or a state. */
  readonly against: readonly {
    readonly sentence: string;
    readonly conditions?: readonly ConditionId[];
    /** An active allergy to one of these is on record. */
    readonly allergyTo?: readonly MedicineId[];
    readonly medicines?: readonly MedicineId[];
    /** Given within that time, or running; an order alone is neither. */
    readonly given?: { readonly medicines: readonly MedicineId[]; readonly within: Threshold };
    readonly when?: Need;
  }[];
  readonly citation: Citation;
}

/** One reason for prevention, and where in the record it would stand. */
export interface PreventionFactor {
  readonly id: string;
  /** In words, as the publication has it. */
  readonly factor: string;
  readonly level: 'high' | 'moderate';
  /** Active on record; with `ever`, at any time. */
  readonly conditions?: readonly ConditionId[];
  readonly ever?: boolean;
  /** On record, dated before this pregnancy. */
  readonly beforeThisPregnancy?: readonly ConditionId[];
  readonly when?: Need;
  /** A question whose "not met" says that this factor is absent. */
  readonly deniedBy?: string;
  /** No birth before this pregnancy. */
  readonly firstBirth?: boolean;
  readonly fetuses?: Threshold;
  /** Age in years (`a`) on the due date. */
  readonly ageAtDueDate?: Threshold;
  readonly bodyMassIndex?: Threshold;
  /** A body mass index outside this range is an error of entry and says nothing. */
  readonly plausibleBodyMassIndex?: { readonly low: Threshold; readonly high: Threshold };
  /** Years (`a`) from the last birth to the due date. */
  readonly sinceLastBirth?: Threshold;
  /** Said when another publication would judge this factor otherwise; `limit`: only where the two limits part. */
  readonly elsewhere?: { readonly sentence: string; readonly limit?: Threshold };
}

/** Who is offered aspirin or calcium, how much and when. */
export interface PreventionRule {
  readonly id: 'aspirin' | 'calcium';
  readonly medicines: readonly MedicineId[];
  readonly factors: readonly PreventionFactor[];
  /** How many factors of a level are enough; absent: that level is not enough by itself. */
  readonly enough: { readonly high?: Threshold; readonly moderate?: Threshold };
  /** Said when the answer is met, not met, cannot tell; absent: a plain default. */
  readonly advice?: string;
  /** The publication advises it for nobody, or was silent: said, and never due. */
  readonly notAdvised?: string;
  /** Facts that no record holds: asked of the woman. */
  readonly toAsk?: readonly string[];
  /** "Indicated by X at Y". */
  readonly dose: string;
  /** Days of gestation between which it is begun; and the window in words. */
  readonly window?: {
    readonly from: Threshold;
    readonly until: Threshold;
    /** Day from which who takes it stops; absent: at birth. */
    readonly stop?: Threshold;
    readonly sentence: string;
  };
  readonly contraindications: readonly ConditionId[];
  /** States in which prevention comes too late. */
  readonly tooLateWhen: Need;
  readonly figures: readonly Figure[];
  readonly citation: Citation;
}

export type ReferralLevel = 'hospital-with-intensive-care' | 'hospital' | 'clinic';

export interface ReferralRule {
  readonly level: ReferralLevel;
  readonly when: Need;
  readonly sentence: string;
  /** Said instead where the urgency is less than the same day. */
  readonly whenSettled?: string;
  readonly citation: Citation;
}

/** One publication and edition, as data. */
export interface Guideline {
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly edition: string;
  readonly year: number;
  readonly url?: string;
  /** Version of this data file, raised with every change that could alter an answer. */
  readonly version: string;
  readonly status: 'active' | 'withdrawn';
  /** How much of it was read, and what was not. */
  readonly remark: string;
  readonly questions: readonly Question[];
  readonly classRules: readonly ClassRule[];
  readonly urgencyRules: readonly UrgencyRule[];
  readonly referralRules: readonly ReferralRule[];
  readonly actionRules: readonly ActionRule[];
  readonly medicineRules?: readonly MedicineRule[];
  readonly treatmentRules?: readonly TreatmentRule[];
  readonly preventionRules?: readonly PreventionRule[];
  /** Limits drawn on a chart and named in cards. */
  readonly chartLimits: { readonly hypertension: PressureLimits; readonly severe: PressureLimits };
  /** How readings become a visit value. */
  readonly visit: VisitValues;
  /** What makes a measurement doubtful, and what to say then. Absent: nothing is said. */
  readonly qualityRules?: readonly QualityRule[];
}

/** How readings of one contact become one value. */
export interface VisitValues {
  /** Readings less than this long after the first belong to the same occasion. */
  readonly occasionLength: Threshold;
  /** Two readings further apart than this ask for a third; the last two are averaged. */
  readonly thirdReadingWhenDifferenceOver: Threshold;
}

/** Clinical numbers the building of a timeline needs; the guideline data supplies them. */
export interface TimelineValues {
  readonly pregnancyLengthDays: Threshold;
  readonly startOfSecondHalfDays: Threshold;
  readonly longestGestationDays: Threshold;
  readonly shortestGestationDays: Threshold;
  readonly afterBirthDays: Threshold;
  readonly redating: readonly {
    readonly fromDays: number;
    readonly toDays: number;
    readonly limitDays: Threshold;
  }[];
  readonly conflictDays: Threshold;
  /** Gestation before which a scan has to confirm the dating; without one a remark says so. Absent: no remark. */
  readonly confirmingScanBefore?: Threshold;
  readonly fundalHeightFrom20Weeks: Threshold;
  readonly plausible: {
    readonly systolicLow: Threshold;
    readonly systolicHigh: Threshold;
    readonly diastolicLow: Threshold;
    readonly diastolicHigh: Threshold;
  };
  readonly pairingTolerance: Threshold;
  readonly futureTolerance: Threshold;
}
