import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Short to read and long to run: without a run before this one, the length of a file is taken for its time. */
const LONGEST = [
  'tests/browser/every-page.test.ts',
  'tests/database/demo.test.ts',
  'tests/api/bad-input.test.ts',
  'tests/database/work-inside.test.ts',
  'tests/database/archive-commands.test.ts',
  'tests/api/letter-privacy.test.ts',
];

const isLongest = ({ moduleId }: TestSpecification) => LONGEST.some((name) => moduleId.endsWith(name));

/** Begins each project with what takes longest, so that no worker is left alone with it at the end. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const projects = [...new Set(sorted.map(({ project }) => project))];
    return projects.flatMap((project) => {
      const own = sorted.filter((file) => file.project === project);
      return [...own.filter(isLongest), ...own.filter((file) => !isLongest(file))];
    });
  }
}
