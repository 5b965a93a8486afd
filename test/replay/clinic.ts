// The attendances of the clinic as an export: one woman each, the recorded diagnosis entered a week after.
import type { Condition, FhirResource } from 'fhir/r4.js';
import { readAttendances, type Attendance } from '../support/day-assessment.ts';
import * as build from '../support/resources.ts';

/** "PET" is the older name of pre-eclampsia, "PIH" of gestational hypertension (dictionary of the data set). */
const recorded = {
  PIH: 'gestational-hypertension',
  Preeclampsia: 'pre-eclampsia',
  PET: 'pre-eclampsia',
  Eclampsia: 'eclampsia',
} as const;

const isRecorded = (name: string): name is keyof typeof recorded => name in recorded;
const millisecondsPerWeek = 7 * 86_400_000;

/** Her resources with ids of their own, named by the line of the file. */
export function exportOf(attendance: Attendance): FhirResource[] {
  const woman = `line-${attendance.line}`;
  const resources = [
    ...(attendance.bundle.entry ?? []).flatMap(({ resource }) => resource ?? []),
    ...diagnosisOf(attendance),
  ];
  return resources.map((resource) => renamed(resource as FhirResource, woman));
}

/** The file gives no date of the diagnosis; a week later no visit can see it. */
function diagnosisOf({ diagnosis, asOf }: Attendance): Condition[] {
  if (!isRecorded(diagnosis)) return [];
  const recordedDate = new Date(Date.parse(asOf) + millisecondsPerWeek).toISOString().slice(0, 10);
  return [{ ...build.condition(recorded[diagnosis]), id: 'diagnosis', recordedDate }];
}

function renamed(resource: FhirResource, woman: string): FhirResource {
  const text = JSON.stringify(resource).replaceAll(`"${build.woman}"`, `"Patient/${woman}"`);
  const copy = JSON.parse(text) as FhirResource;
  return { ...copy, id: resource.resourceType === 'Patient' ? woman : `${woman}-${resource.id ?? ''}` };
}

export const readExport = (): FhirResource[][] => readAttendances().map(exportOf);
