import { describe } from 'vitest';
import { faulty, sound } from './example.ts';

describe('F25 temporary support', () => {
  const items = `
energy:
  raised-frame: { name: raised frame, type: raised-load, isolate-before: [axle] }
aids:
  stand: { name: stand, count: 2 }
parts:
  axle: { name: axle, mass: 40 kg }
`;
  const body = `1. :fit[Put 2 stands under the frame]{item=stand} and :isolate[let the frame down on them]{item=raised-frame}.
2. :remove{item=axle}
   ::step{people=2}
3. :install{item=axle}
   ::step{people=2}
4. :restore[Lift the frame off the stands]{item=raised-frame} and :withdraw[take both stands away]{item=stand}.
`;
  sound('on stands before anything comes off, off them when all is back', { items, body });
  faulty(
    'one stand stays',
    {
      items,
      body: body.replace(
        'take both stands away]{item=stand}',
        'take one stand away]{item=stand qty=1}',
      ),
    },
    ['aid-left-in stand'],
  );
  faulty(
    'the load is let off too early',
    { items, body: body.replace(/(3\. .*\n.*\n)(4\. .*\n)/, '$2$1') },
    ['energy-live axle'],
  );
  faulty(
    'nothing holds the load',
    {
      items,
      body: body
        .replace(/1\. .*\n/, '1. :fit{item=stand}\n')
        .replace(':restore[Lift the frame off the stands]{item=raised-frame} and ', ''),
    },
    ['energy-live axle'],
  );
  const jack =
    'fasteners:\n  mount-bolt: { name: mount bolt, count: 2, torque: 60 N·m, holds: motor }\nparts:\n  motor: { name: motor }\naids:\n  jack: { name: jack }';
  const lowered =
    '1. :fit[Run the jack up under the motor]{item=jack}.\n2. :remove{item=mount-bolt}. :remove{item=motor}\n3. :install{item=motor}. :install{item=mount-bolt}\n4. :torque{item=mount-bolt}. :withdraw{item=jack}\n';
  sound('carried while nothing holds it', {
    items: jack,
    body: lowered,
  });
});

describe('F26 temporary fasteners and tooling', () => {
  const items = `
fasteners:
  lid-bolt: { name: lid bolt, count: 4, torque: 22 N·m, holds: lid }
parts:
  lid: { name: lid }
aids:
  guide-stud: { name: guide stud, count: 2 }
`;
  const body = `1. :remove{item=lid-bolt}. :fit[Screw 2 guide studs in]{item=guide-stud}.
2. :remove{item=lid}
3. :install{item=lid}
4. :install[Put in 2 lid bolts]{item=lid-bolt qty=2}. :withdraw[Screw the guide studs out]{item=guide-stud}.
5. :install[Put in the other 2 lid bolts]{item=lid-bolt qty=2}. :torque{item=lid-bolt}
`;
  sound('fitted for the work and taken out again', { items, body });
  faulty(
    'left in the machine',
    { items, body: body.replace(' :withdraw[Screw the guide studs out]{item=guide-stud}.', '') },
    ['aid-left-in guide-stud'],
  );
});
