/** A manual with everything on its sheet that a job keeps: steps in steps, places, readings, variants. */
export const jobManual: Readonly<Record<string, string>> = {
  'manual.yaml': `title: Cart manual
edition: 2
variants:
  brakes: [drum, none]
`,
  'machines/cart.yaml': `name: Cart
parts:
  wheel: { name: wheel, each: [left, right] }
  rod: { name: rod, limits: 49.9..50 mm }
fasteners:
  wheel-nut: { name: wheel nut, count: 5, each: [left, right], thread: M12, class: 8.8, torque: 90 N·m, holds: wheel }
`,
  'procedures/wheels.md': `---
procedure: wheels
title: Look at the wheels
machine: cart
revision: 2
---

## Look

1. Park the cart.
2. Look under the cart.
   1. Look at the left side.
   2. Look at the right side.
3. :check[Look at the wheels]{item=wheel}.
4. :measure[Measure the rod]{item=rod}.
5. Look at the brake.
   ::step{when="brakes = drum"}

## Wheels off and on

1. :remove[Take the nuts off]{item=wheel-nut}.
2. :remove[Take the wheels off]{item=wheel}.
3. :install[Put the wheels on]{item=wheel}.
4. :install[Put the nuts on]{item=wheel-nut}.
5. :torque[Tighten the nuts]{item=wheel-nut}.
`,
  'procedures/wash.md': `---
procedure: wash
title: Wash the cart
machine: cart
---

1. Wash it.
2. Dry it.
`,
};
