/**
 * The words of the section that hands a design on, and of the page of paper for a client, in German.
 */
/** @import * as English from "../en/share.js" */
import { countText } from "../numbers.js";
import { numberText } from "./page.js";

/** @param {number} times */
const timesText = (times) => `der ${numberText(times, 1)}\u2011fachen`;

/** @type {typeof English.SHARE_WORDS} */
export const SHARE_WORDS = {
  link: "Link zu diesem Entwurf",
  copy: "Link kopieren",
  share: "Teilen …",
  copied: "Kopiert.",
  not_copied: "Dieser Browser lässt die Seite nicht kopieren; der Link ist markiert: mit Strg+C kopieren.",
  not_shared: "Das System hat den Link nicht angenommen; statt dessen kopieren.",
  link_about: (characters) =>
    `Er öffnet diesen Entwurf, diese Mode, Farbe und Blickrichtung. Alles steht im Link selbst (${countText(characters)} Zeichen), hinter dem #; das schickt ein Browser an keinen Server.`,
  code: "Der Link als Code",
  code_label: (name) => `QR-Code des Links zu „${name}“`,
  code_about: "Für die Kamera eines Telefons, auf Papier oder von diesem Bildschirm.",
  large: "Groß zeigen",
  close: "Schließen",
  save_code: "Code speichern (SVG)",
  saved: (file) => `Gespeichert als ${file}.`,
  summary: "Ein Blatt für Kunden",
  summary_about:
    "Bild, Grundriss, was Insel, Flügel und Engstellen hier tun, Hauptzahlen mit ihrer Sicherheit, Vorbehalte und der Code, auf einem Blatt A4 oder Letter. Das Bild ist die Bühne, wie sie jetzt zu sehen ist.",
  print: "Drucken oder als PDF speichern",
  preparing: "Wird vorbereitet …",
  offline: "Ohne Netz",
  is_kept:
    "Diese Seite ist auf diesem Gerät aufbewahrt: sie öffnet sich und rechnet ohne Netz. Im Menü des Browsers lässt sie sich wie ein Programm installieren.",
  not_kept:
    "Sobald dieser Browser die Seite aufbewahrt hat, einige Sekunden nach einem Besuch, öffnet sie sich und rechnet ohne Netz.",
};

/** @type {typeof English.SHEET_WORDS} */
export const SHEET_WORDS = {
  changed: "Der Entwurf hat sich inzwischen geändert. Drucken, sobald seine Zahlen da sind.",
  tagline: (date) => `Wie sich diese Decke bewegt, berechnet mit Bombatura, ${date}`,
  picture: (mode, hertz, exaggeration_mm, by_motion) =>
    `${mode}, ${hertz}. Die größte Bewegung ist ${numberText(exaggeration_mm)} mm gezeichnet; eine Mode hat keine wahre Größe: sie sagt, wie sich die Decke biegt, nicht wie weit.${
      by_motion ? " Die Farben zeigen Bewegung nach außen und innen; wo sie sich treffen, ruht das Holz." : ""
    }`,
  plan: "Grundriss von außen, mit den Höhenlinien",
  key: { island: "Insel", wing: "Flügel", narrows: "schmalstes Holz neben den Augen" },
  says: "Was die Löcher an dieser Decke tun",
  island: "Insel",
  island_says: (area_cm2, mode, times) =>
    `Das Holz zwischen den Löchern, ${numberText(area_cm2, 1)} cm², trägt den Steg. Am stärksten beteiligt ist es an ${mode}: Gramm für Gramm schwingt es dann mit ${timesText(times)} Energie der ganzen Decke.`,
  wings: "Flügel",
  wings_say: (mode, times, up_to) =>
    `Die Zungen neben den Augen schlagen bei hohen Frequenzen. Unter den Moden bis ${up_to} sind sie am stärksten an ${mode} beteiligt, Gramm für Gramm mit ${timesText(times)} Energie der ganzen Decke.`,
  narrows: "Engstellen",
  narrows_say: (width_mm, thickness_mm) =>
    `Zwischen einem unteren Auge und dem Rand bleiben ${numberText(width_mm, 1)} mm Holz, im Mittel ${numberText(thickness_mm, 1)} mm stark. Risse beginnen, wo Holz schmal und dünn ist; ob das hier genügt, sagt der Geigenbauer.`,
  no_holes: "Ohne Löcher",
  no_holes_say: "Diese Decke ist noch ganz; Insel, Flügel und Engstellen hat sie noch nicht.",
  free: "Die Frequenzen sind die der Decke für sich in der Hand, bevor sie aufgeleimt wird.",
  held: "Die Frequenzen sind die der Decke, am Rand gehalten wie im Entwurf, ohne Boden und Luft.",
  figures: "Hauptzahlen",
  figure: "Zahl",
  value: "berechnet",
  sure: "wie sicher",
  mode: (number, name) => (name === `Mode ${number}` ? name : `Mode ${number} (${name})`),
  not_judged: "noch unbeurteilt",
  mass: "Masse des Holzes",
  mass_sure: (density_kg_m3) => `bei ${numberText(density_kg_m3, 0)} kg/m³`,
  rise: "Wölbung über dem Rand",
  typed: "wie entworfen",
  figures_about: (nodes) =>
    `±: eine Standardabweichung dessen, worin sich Bretter der Art unterscheiden, und was Netz und Schale offenlassen (${countText(nodes)} Knoten).`,
  narrowest: "Wo das Holz am schmalsten ist",
  place: "Stelle",
  least: "mindestens",
  thickness: "mittlere Stärke",
  narrowest_about:
    "Bei einem Flügel die Wurzel, sonst der kürzeste Weg von Rand zu Rand. Von zwei Seiten die schmalere.",
  cautions: "Ein Modell ist keine Decke",
  cautions_say:
    "Holz ist von Brett zu Brett verschieden; Feuchte, Leim und Lack zählen mit. Die Zahlen vergleichen Gedanken und versprechen keinen Klang. Was zu dünn oder zu knapp geschnitten ist, lässt sich nicht heilen: es entscheidet das Urteil des Geigenbauers an der Werkbank, bei einem wertvollen Instrument das eines ausgebildeten Restaurators, nach den Regeln, die dort gelten.",
  hertz: (hertz, spread) => `${hertz} ${spread}${spread === "" ? "" : " "}Hz`,
  in_mode: (number, hertz) => `Mode ${number} bei ${hertz}`,
  way_by_code: (site) => `Der Code öffnet diesen Entwurf auf ${site}; dort lässt er sich drehen und in Bewegung sehen.`,
  way_by_link: (site) => `Für einen Code ist der Entwurf zu groß; sein Link oder seine Datei öffnet sich auf ${site}.`,
  code: "QR-Code des Links zu diesem Entwurf",
};
