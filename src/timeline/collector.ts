// Where readers say what was not used. Hands on the lists, each resource in at most one of them.
import type { NotNeeded, Received, SetAside } from '../bundle/read-bundle-types.ts';
import type { Issue } from '../errors.ts';
import type { TimelineContext } from './context.ts';
import { fieldsOf } from './fields.ts';
import { observationKindOf } from './observation-kind.ts';

export interface Collector {
  readonly setAside: SetAside[];
  readonly notNeeded: NotNeeded[];
  readonly issues: Issue[];
  readonly say: Pick<TimelineContext, 'setAside' | 'notNeeded' | 'issue'>;
}

/** An empty collector. The first thing said of a resource stands; an issue said twice counts once. */
export function openCollector(): Collector {
  const setAside: SetAside[] = [];
  const notNeeded: NotNeeded[] = [];
  const issues: Issue[] = [];
  const concluded = new Set<number>();
  const said = new Set<string>();
  const isFirst = ({ index }: Received): boolean => !concluded.has(index) && concluded.add(index).has(index);
  return {
    setAside,
    notNeeded,
    issues,
    say: {
      setAside: (received, { code, element, message }) => {
        if (!isFirst(received)) return;
        const about = aboutOf(received);
        const expression = expressionOf(received, element);
        setAside.push({
          ...placeOf(received),
          code,
          expression,
          message,
          ...(about === undefined ? {} : { about }),
        });
      },
      notNeeded: (received, why) => {
        if (isFirst(received)) notNeeded.push({ ...placeOf(received), why });
      },
      issue: (received, { element, ...issue }) => {
        const expression = expressionOf(received, element);
        const key = `${issue.code} ${expression}`;
        if (said.has(key)) return;
        said.add(key);
        issues.push({ ...issue, expression });
      },
    },
  };
}

function aboutOf({ resource }: Received): SetAside['about'] {
  const kind = resource.resourceType === 'Observation' ? observationKindOf(fieldsOf(resource)) : undefined;
  if (kind === 'pressure') return 'blood-pressure';
  return kind === 'urine-protein' ? 'urine' : undefined;
}

function placeOf({ index, path, reference, resource }: Received) {
  return { index, path, reference, resourceType: resource.resourceType };
}

function expressionOf({ path }: Received, element: string): string {
  return element === '' ? path : `${path}.${element}`;
}
