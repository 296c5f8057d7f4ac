import type { Figures } from './figures.ts';
import { yamlText } from './yaml-text.ts';

/** `machines/<id>.yaml`: what there is to take apart on the example machine. */
export function machineFile(id: string, name: string, figures: Figures): string {
  return `# What there is to take apart on this machine. An entry is written here once, with its figures; procedures name
# it by its id. Replace these entries by those of your machine: all figures here are examples.
machine: ${yamlText(id)}
name: ${yamlText(name)}
note: Electric motor, belt drive under a guard, gearbox with the paddle shaft.

# Bolts, screws, nuts, plugs. count: all of them. holds: the part that cannot come off before they are out.
fasteners:
  guard-screw: { name: guard screw, count: 4, ${figures.smallScrew}, holds: belt-guard }
  motor-bolt:
    name: motor bolt
    count: 4
    ${figures.motorBolt}
    # The picture of the order in which they are tightened is drawn from this.
    pattern: { rectangle: [2, 2] }
    # The belt comes off as soon as these are loose.
    holds: drive-belt
    lets-go-when: loose
    behind: belt-guard
  drain-plug: { name: drain plug, ${figures.drainPlug} }
  # The trade gives no figure for this one.
  filler-plug: { name: filler plug, tightness: hand-tight }

# Parts. behind: what must be off before this one can be reached. single-use: a new one goes in.
parts:
  belt-guard: { name: belt guard, mass: ${figures.guardMass}, also-called: [guard] }
  drive-belt:
    name: drive belt
    behind: belt-guard
    single-use: true
    # What a measurement of it must give.
    limits: ${figures.deflection}
  # Only machines with two belts have this one.
  second-belt: { name: second belt, behind: drive-belt, single-use: true, when: belts = two }
  pulley: { name: pulley, count: 2 }
  plug-washer: { name: plug washer, behind: drain-plug, single-use: true }

# Hoses, cables, connectors.
connections:
  lamp-connector: { name: lamp connector, type: connector, on: belt-guard, when: lamp }

# Fluids. What is drained must be filled again, and its plugs shut before.
circuits:
  gear-oil:
    name: gear oil
    fluid: Mineral gear oil, ISO VG 220
    capacity: ${figures.capacity}
    containers: ${figures.containers}
    drain: drain-plug
    fill: filler-plug
    dispose: Give used oil to a licensed collector.

# What can move, shock or burn. isolate-before: what must not be touched while it is live.
energy:
  mains:
    name: mains
    type: electrical
    isolate-before: [guard-screw, belt-guard, motor-bolt, drive-belt, second-belt, drain-plug]

# Things that are fitted for the work. The check tells when one stays in the machine.
aids:
  lockout-padlock: { name: lockout padlock }
  drain-pan: { name: drain pan }

tools:
  torque-wrench: { name: torque wrench, size: ${yamlText(figures.wrench)} }

consumables:
  cloth: { name: clean cloth }

# Hazards that are met in more than one place. raised-by: the actions before which the panel must stand.
hazards:
  belt-starts:
    signal: danger
    hazard: The belt can start and pull fingers in
    harm: Crushed or severed fingers
    avoid: Make sure that your own padlock is on the switch before you reach for the belt.
    raised-by:
      - { verb: remove, item: belt-guard }
  warm-oil:
    signal: caution
    hazard: Warm oil runs out
    harm: Burns and slippery floors
    avoid: Let the gearbox cool until you can hold your hand on it. Wear gloves. Wipe up what is spilt.
    raised-by:
      - { verb: remove, item: drain-plug }
`;
}
