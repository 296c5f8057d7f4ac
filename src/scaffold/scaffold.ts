import type { TextFile } from '../source/index.ts';
import type { Answers } from './answers.ts';
import { changeGearOil } from './change-gear-oil.ts';
import { drivePicture } from './drive-picture.ts';
import { figuresFor } from './figures.ts';
import { machineFile } from './machine-file.ts';
import { machineId } from './machine-id.ts';
import { manualFile } from './manual-file.ts';
import { replaceBelt } from './replace-belt.ts';
import { makeSafe, returnToService } from './safety-procedures.ts';

/**
 * The files of a new manual that passes the check, in order of path. Texts of `answers` are one line each and not
 * empty (`plainLine`).
 */
export function scaffold(answers: Answers): readonly TextFile[] {
  const id = machineId(answers.machine);
  const figures = figuresFor[answers.units];
  return [
    { path: 'figures/drive.svg', text: drivePicture },
    { path: `machines/${id}.yaml`, text: machineFile(id, answers.machine, figures) },
    { path: 'manual.yaml', text: manualFile(answers, figures) },
    { path: 'procedures/drive/replace-drive-belt.md', text: replaceBelt(id) },
    { path: 'procedures/safety/make-safe.md', text: makeSafe(id) },
    { path: 'procedures/safety/return-to-service.md', text: returnToService(id) },
    { path: 'procedures/service/change-gear-oil.md', text: changeGearOil(id) },
  ];
}
