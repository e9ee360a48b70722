/**
 * The sentences of the sections about what is fixed to the top, its wood and its rim.
 */

export const FITTING_WORDS = {
  /** @type {(key: string, name: string) => string} */
  species: (_, name) => name,
  bar: "Bar",
  with_bar: "With a bar",
  post: "Post",
  with_post: "With a post",
  stick_wood: "Wood",
  usual:
    "The first bar or post is the usual one for a top of this size, by published workshop measures: a beginning, not advice. Bar and post stand in the plan, where their handles move them.",
  rigid_back: "The post stands on a back that does not move.",
  masses: "Added masses",
  masses_about: "Such as the bridge: half of its mass at each foot. They count as points without size.",
  /** @type {(number: number) => string} */
  mass: (number) => `Mass ${number}`,
  add_mass: "Add a mass",
  remove_mass: "Remove",
  rim: "The rim is",
  rims: {
    free: "free, as tapped in the hand",
    hinged: "held, free to turn",
    clamped: "held fast",
    elastic: "on ribs that give way",
  },
  ribs: "Ribs, linings and blocks",
  ribs_about:
    "The ribs stand on a back that does not move. How much stiffer blocks are is a guess: look at how little or how much it changes.",
  wood: "Cut from",
  measured: "This board was measured",
  board: "The board",
  density: "Density",
  speed_along: "Speed of sound along the grain",
  speed_across: "Speed of sound across the grain",
  speed_left_out: "by species",
  measured_about:
    "Density is mass over volume of a wedge or offcut; speed is length over time, or twice the length times the tap tone of a free bar along its length. Stiffness follows as density times speed squared.",
  constants: "What the wood is taken to be",
  columns: ["Constant", "Value"],
  /** @type {Readonly<Record<string, string>>} */
  constant_names: {
    density_kg_m3: "Density, kg/m³",
    e_l_gpa: "Stiffness along the grain, GPa",
    e_r_gpa: "Across the rings, GPa",
    e_t_gpa: "Along the rings, GPa",
    g_lr_gpa: "Shear, grain and across the rings, GPa",
    g_lt_gpa: "Shear, grain and along the rings, GPa",
    g_rt_gpa: "Rolling shear, GPa",
    nu_lr: "Poisson’s ratio, grain to across the rings",
    nu_lt: "Poisson’s ratio, grain to along the rings",
    nu_rt: "Poisson’s ratio, across to along the rings",
    speed_along_m_s: "Speed of sound along, m/s",
    speed_across_m_s: "Speed of sound across, m/s",
  },
  source: "Means of clear wood at about 12 % moisture.",
  scatter:
    "Boards of one species differ by some 22 % in stiffness and 10 % in density: measure yours, and the ± in the table of modes becomes smaller.",
};
