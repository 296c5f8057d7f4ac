import { XmlElement, XmlText } from '@rgrove/parse-xml';

interface Form {
  readonly required: readonly string[];
  readonly optional: readonly string[];
  readonly children: readonly string[];
  /** Whether text may stand in it. */
  readonly text?: true;
}

/**
 * The elements that we write, as junit-10.xsd of the Jenkins xUnit plug-in has them
 * (github.com/jenkinsci/xunit-plugin, src/main/resources/org/jenkinsci/plugins/xunit/types/model/xsd, MIT licence).
 */
const forms: Readonly<Record<string, Form>> = {
  testsuites: {
    required: [],
    optional: ['name', 'time', 'tests', 'failures', 'errors'],
    children: ['testsuite'],
  },
  testsuite: {
    required: ['name', 'tests', 'failures', 'errors'],
    optional: [
      'group',
      'time',
      'skipped',
      'timestamp',
      'hostname',
      'id',
      'package',
      'file',
      'log',
      'url',
    ],
    children: ['testsuite', 'properties', 'testcase', 'system-out', 'system-err'],
  },
  testcase: {
    required: ['name'],
    optional: ['time', 'classname', 'group'],
    children: ['skipped', 'error', 'failure', 'system-out', 'system-err'],
  },
  failure: { required: [], optional: ['type', 'message'], children: [], text: true },
  skipped: { required: [], optional: ['type', 'message'], children: [], text: true },
  'system-out': { required: [], optional: [], children: [], text: true },
};

/** What in an element and below it the schema does not allow. */
export function junitFaults(element: XmlElement): string[] {
  const { name, attributes } = element;
  const form = Object.hasOwn(forms, name) ? forms[name] : undefined;
  if (form === undefined) return [`there is no ${name}`];
  const given = Object.keys(attributes);
  const may = [...form.required, ...form.optional];
  const inside = element.children
    .filter((child) => child instanceof XmlElement)
    .flatMap((child) =>
      form.children.includes(child.name) ? junitFaults(child) : [`${child.name} in ${name}`],
    );
  return [
    ...form.required.filter((one) => !given.includes(one)).map((one) => `${name} without ${one}`),
    ...given.filter((one) => !may.includes(one)).map((one) => `${name} with ${one}`),
    ...(form.text || hasNoText(element) ? [] : [`text in ${name}`]),
    ...inside,
  ];
}

const hasNoText = (element: XmlElement): boolean =>
  element.children.every((child) => !(child instanceof XmlText) || /^\s*$/.test(child.text));
