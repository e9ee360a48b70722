/**
 * The sentences of the sections about what is fixed to the top, its wood and its rim, in German.
 */
/** @import * as English from "../en/fittings.js" */

/** @type {Readonly<Record<string, string>>} */
const SPECIES = {
  sitka_spruce: "Sitkafichte",
  engelmann_spruce: "Engelmannfichte",
  western_redcedar: "Riesenlebensbaum",
};

/** @type {typeof English.FITTING_WORDS} */
export const FITTING_WORDS = {
  species: (key, name) => SPECIES[key] ?? name,
  bar: "Bassbalken",
  with_bar: "Mit Bassbalken",
  post: "Stimme",
  with_post: "Mit Stimme",
  stick_wood: "Holz",
  usual:
    "Der erste Balken oder die erste Stimme ist wie üblich bei einer Decke dieser Größe, nach veröffentlichten Werkstattmaßen: ein Anfang, kein Rat. Balken und Stimme stehen in der Draufsicht, wo ihre Griffe sie verschieben.",
  rigid_back: "Die Stimme steht auf einem Boden, der sich nicht bewegt.",
  masses: "Aufgesetzte Massen",
  masses_about: "Etwa der Steg: die Hälfte seiner Masse an jedem Fuß. Sie zählen als Punkte ohne Größe.",
  mass: (number) => `Masse ${number}`,
  add_mass: "Masse aufsetzen",
  remove_mass: "Entfernen",
  rim: "Der Rand ist",
  rims: {
    free: "frei, wie beim Klopfen in der Hand",
    hinged: "gehalten, frei zu kippen",
    clamped: "fest eingespannt",
    elastic: "auf Zargen, die nachgeben",
  },
  ribs: "Zargen, Reifchen und Klötze",
  ribs_about:
    "Die Zargen stehen auf einem Boden, der sich nicht bewegt. Wie viel steifer Klötze sind, ist geraten: ausprobieren, wie viel oder wenig es ändert.",
  wood: "Geschnitten aus",
  measured: "Dieses Brett wurde gemessen",
  board: "Das Brett",
  density: "Dichte",
  speed_along: "Schallgeschwindigkeit längs der Faser",
  speed_across: "Schallgeschwindigkeit quer zur Faser",
  speed_left_out: "nach Art",
  measured_about:
    "Dichte ist Masse durch Volumen eines Keils oder Abschnitts; Geschwindigkeit ist Länge durch Zeit, oder die doppelte Länge mal dem Klopfton eines freien Stabes längs. Die Steife folgt als Dichte mal Geschwindigkeit im Quadrat.",
  constants: "Wofür das Holz genommen wird",
  columns: ["Größe", "Wert"],
  constant_names: {
    density_kg_m3: "Dichte, kg/m³",
    e_l_gpa: "Steife längs der Faser, GPa",
    e_r_gpa: "Quer zu den Jahrringen, GPa",
    e_t_gpa: "Längs der Jahrringe, GPa",
    g_lr_gpa: "Schub, Faser und quer zu den Ringen, GPa",
    g_lt_gpa: "Schub, Faser und längs der Ringe, GPa",
    g_rt_gpa: "Rollschub, GPa",
    nu_lr: "Querdehnzahl, Faser zu quer zu den Ringen",
    nu_lt: "Querdehnzahl, Faser zu längs der Ringe",
    nu_rt: "Querdehnzahl, quer zu längs der Ringe",
    speed_along_m_s: "Schallgeschwindigkeit längs, m/s",
    speed_across_m_s: "Schallgeschwindigkeit quer, m/s",
  },
  source: "Mittelwerte fehlerfreien Holzes bei etwa 12 % Feuchte.",
  scatter:
    "Bretter einer Art unterscheiden sich um etwa 22 % in der Steife und 10 % in der Dichte: das eigene messen, dann wird das ± in der Tabelle kleiner.",
};
