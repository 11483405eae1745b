/** Answers to 'why' in English, of the shared components and of the view Float. They load with the first question. */
export const texts = {
  to: "{from} to {to}",
  "sum.formula": "R = sum of the forces on the bait, each with its direction",
  "sum.source": "Newton's second law; docs/model.md §6",
  "sum.meaning":
    "What is left when all forces are added: it speeds the bait up or slows it down, with the water that moves along. Near 0 the bait is at rest or runs steadily.",
  "force.meaning": "One force on the bait at this moment; its arrow on the stage has the same letter.",
  "force.forward": "forward along the retrieve",
  "force.up": "upward",
  density: "Density of {name}",
  "density.wood":
    "A published mean. One board differs from the next by a tenth and more: weigh your blank and type its own density.",
  "density.other": "A published value; the piece in hand may differ.",
  "density.table": "from the table of materials",
  "density.spread": "published spread",
  "moment.depth": "Depth at this moment",
  "moment.depth.meaning": "Depth of the tie eye under the still surface.",
  "moment.depth.formula": "depth = −Z of the tie eye",
  "moment.pitch": "Pitch at this moment",
  "moment.pitch.meaning": "Angle of the datum line above the horizontal, nose-up positive.",
  "moment.pitch.formula": "dθ/dt = q, with q from the moments of all forces about G",
  "moment.speed": "Speed at this moment",
  "moment.speed.meaning": "Speed of the centre of gravity through the still water's frame.",
  "moment.speed.formula": "speed = √(V_X² + V_Z²)",
  "moment.line": "Line at this moment",
  "moment.line.meaning":
    "Pull of the line at the tie eye; nothing where it is slack. A result, not a setting.",
  "moment.line.formula": "tension = EA · strain where stretched, 0 where slack; docs/model.md §7",
  "moment.time": "moment of the recording",
  "moment.source":
    "Simulated: the equations of motion of docs/model.md §6 and §8, 960 steps a second, 60 kept.",
  "moment.note":
    "Depth under tow is good to 20–30 % until a measured run calibrates it; attitudes at rest are as good as the weighings.",
} as const;
