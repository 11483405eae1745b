import type { Echoes } from "./echo";

/** Names of materials, and what their entries say of sources and spread. Woods by their trade names. */
export const materials: Echoes = {
  // Lines
  nylon: "Nylon",
  fluorocarbon: "Fluorocarbon",
  braid: "geflochten",

  // Metals
  lead: "Blei",
  tungsten: "Wolfram",
  "tungsten alloy, class 4": "Wolframlegierung, Klasse 4",
  "pure tungsten": "reines Wolfram",
  bismuth: "Bismut",
  tin: "Zinn",
  zinc: "Zink",
  copper: "Kupfer",
  nickel: "Nickel",
  iron: "Eisen",
  aluminium: "Aluminium",
  "carbon steel": "Kohlenstoffstahl",
  "stainless steel": "Edelstahl",
  "stainless 302": "Edelstahl 302",
  "stainless 440": "Edelstahl 440",
  brass: "Messing",
  "cartridge brass": "Patronenmessing",
  bronze: "Bronze",
  "electroless nickel": "chemisch Nickel",

  // Plastics and others
  polycarbonate: "Polycarbonat",
  acrylic: "Acrylglas",
  laminate: "Glasfaserlaminat",
  ABS: "ABS",
  polystyrene: "Polystyrol",
  polyethylene: "Polyethylen",
  POM: "POM",
  PET: "PET",
  PVDF: "PVDF",
  epoxy: "Epoxidharz",
  "UV resin": "UV-Harz",
  "water-based paint": "Farbe auf Wasserbasis",
  lacquer: "Nitrolack",
  "polyurethane varnish": "Polyurethanlack",
  cyanoacrylate: "Sekundenkleber",
  "tooling board": "PU-Blockmaterial",
  glass: "Glas",
  "glass fibre": "Glasfaser",
  "paraffin wax": "Paraffin",
  "given density": "eigene Dichte",

  // Woods
  alder: "Roterle",
  "white ash": "Weißesche",
  "bigtooth aspen": "Großzahn-Espe",
  aspen: "Zitterpappel",
  basswood: "Amerikanische Linde",
  beech: "Amerikanische Buche",
  birch: "Papierbirke",
  "sweet birch": "Zuckerbirke",
  "yellow birch": "Gelbbirke",
  butternut: "Butternuss",
  cherry: "Amerikanischer Kirschbaum",
  "balsam poplar": "Balsampappel",
  "black cottonwood": "Westliche Balsampappel",
  cottonwood: "Kanadische Pappel",
  maple: "Zuckerahorn",
  "bigleaf maple": "Großblättriger Ahorn",
  "red maple": "Rotahorn",
  "silver maple": "Silberahorn",
  "white oak": "Weißeiche",
  tupelo: "Tupelo",
  walnut: "Amerikanischer Nussbaum",
  willow: "Schwarzweide",
  "yellow poplar": "Tulpenbaum",
  baldcypress: "Sumpfzypresse",
  "Atlantic white cedar": "Weiße Scheinzypresse",
  "eastern redcedar": "Virginischer Wacholder",
  "incense cedar": "Weihrauchzeder",
  "northern white cedar": "Abendländischer Lebensbaum",
  "Port Orford cedar": "Oregonzeder",
  cedar: "Rotzeder",
  "yellow cedar": "Gelbzeder",
  "Douglas fir": "Douglasie",
  "balsam fir": "Balsamtanne",
  pine: "Weymouthkiefer",
  "ponderosa pine": "Gelbkiefer",
  "red pine": "Amerikanische Rotkiefer",
  "sugar pine": "Zuckerkiefer",
  "western white pine": "Westliche Weymouthkiefer",
  "old-growth redwood": "Redwood aus Urwald",
  "young-growth redwood": "Redwood, nachgewachsen",
  "Engelmann spruce": "Engelmannfichte",
  spruce: "Sitkafichte",
  balsa: "Balsa",
  banak: "Virola",
  ceiba: "Ceiba",
  cuangare: "Cuangare",
  "Mexican cypress": "Mexikanische Zypresse",
  jelutong: "Jelutong",
  "light red meranti": "Helles Rotes Meranti",
  limba: "Limba",
  "African mahogany": "Khaya",
  mahogany: "Mahagoni",
  obeche: "Abachi",
  okoume: "Okoumé",
  "Spanish cedar": "Cedro",
  sapele: "Sapeli",
  teak: "Teak",
  paulownia: "Paulownia",
  lime: "Sommerlinde",
  "small-leaved lime": "Winterlinde",

  // Sources
  "NIST material constants (X-ray and STAR tables), elemental, room temperature":
    "NIST, Materialkonstanten (Röntgen- und STAR-Tabellen), reine Elemente, Raumtemperatur",
  "NIST material constants (X-ray and STAR tables)": "NIST, Materialkonstanten (Röntgen- und STAR-Tabellen)",
  "NIST material constants, from memory": "NIST, Materialkonstanten, aus dem Gedächtnis",
  "PNNL-15870 Rev. 1, 2011, Compendium of Material Composition Data":
    "PNNL-15870 Rev. 1, 2011, Compendium of Material Composition Data",
  "{source}; PNNL-15870 agrees": "{source}; PNNL-15870 stimmt überein",
  "{source} (types 304 and 316)": "{source} (Sorten 304 und 316)",
  "{source}, medium density; UHMWPE in bulk 940 (plastics tables)":
    "{source}, mittlere Dichte; UHMWPE im Block 940 (Kunststofftabellen)",
  "{source}, for PET": "{source}, für PET",
  "{source}, plate glass": "{source}, Flachglas",
  "ASTM B777 class 1 (90 % W), from memory": "ASTM B777 Klasse 1 (90 % W), aus dem Gedächtnis",
  "ASTM B777 class 4 (97 % W), from memory": "ASTM B777 Klasse 4 (97 % W), aus dem Gedächtnis",
  "UNS C36000 alloy data, 0.307 lb/in³ = 8.49 g/cm³ at 20 °C":
    "Legierungsdaten UNS C36000, 0,307 lb/in³ = 8,49 g/cm³ bei 20 °C",
  "Copper Development Association alloy data, 0.308 lb/in³, from memory":
    "Legierungsdaten der Copper Development Association, 0,308 lb/in³, aus dem Gedächtnis",
  "ASM Handbook vol. 5, from memory": "ASM Handbook, Band 5, aus dem Gedächtnis",
  "{source} (0.5 % C)": "{source} (0,5 % C)",
  "supplier data sheets to MIL-I-24768/2 and /27, ASTM D792":
    "Datenblätter von Lieferanten nach MIL-I-24768/2 und /27, ASTM D792",
  "plastics property tables, extrusion grade": "Kunststofftabellen, Sorte zum Extrudieren",
  "as PVDF, from memory": "wie PVDF, aus dem Gedächtnis",
  "fibre makers' data, from memory": "Angaben von Faserherstellern, aus dem Gedächtnis",
  "polymer density table, cured and unfilled: 1120–1180":
    "Dichtetabelle für Polymere, ausgehärtet und ungefüllt: 1120–1180",
  "manufacturers' data, from memory": "Angaben von Herstellern, aus dem Gedächtnis",
  "dry film of binder and pigment, from memory":
    "trockener Film aus Bindemittel und Pigment, aus dem Gedächtnis",
  "dry film with mineral filler, from memory":
    "trockener Film mit mineralischem Füllstoff, aus dem Gedächtnis",
  "dry film, from memory": "trockener Film, aus dem Gedächtnis",
  "cured film, from memory": "ausgehärteter Film, aus dem Gedächtnis",
  "cured polymer, from memory": "ausgehärtetes Polymer, aus dem Gedächtnis",
  "manufacturers' grades, from memory": "Sorten der Hersteller, aus dem Gedächtnis",
  "{source}, Table 5-3b: G = {G} oven-dry over volume at 12 %; density at 12 % moisture = 1120 G":
    "{source}, Tabelle 5-3b: G = {G}, darrtrocken durch Volumen bei 12 %; Dichte bei 12 % Feuchte = 1120 G",
  "{source}, Table 5-5b: G = {G} oven-dry over green volume; density at 12 % moisture estimated with eq. 4-11":
    "{source}, Tabelle 5-5b: G = {G}, darrtrocken durch Volumen im frischen Zustand; Dichte bei 12 % Feuchte geschätzt mit Gl. 4-11",
  "USDA Forest Products Laboratory 2021, Wood Handbook FPL-GTR-282, ch. 5":
    "USDA Forest Products Laboratory 2021, Wood Handbook FPL-GTR-282, Kap. 5",
  "Chudnoff 1984, Tropical Timbers of the World, USDA Agric. Handbook 607: 8–14 lb/ft³, trade average 10 lb/ft³":
    "Chudnoff 1984, Tropical Timbers of the World, USDA Agric. Handbook 607: 8–14 lb/ft³, im Handel im Mittel 10 lb/ft³",
  "Akyildiz & Kol 2010, J. Environ. Biol. 31:351–355: air-dry density as printed":
    "Akyildiz & Kol 2010, J. Environ. Biol. 31:351–355: lufttrockene Dichte wie gedruckt",
  "Wagenführ 1996, Holzatlas, and Gottwald 1970, as quoted in a timber trade sheet: at 12 % moisture":
    "Wagenführ 1996, Holzatlas, und Gottwald 1970, nach einem Blatt des Holzhandels: bei 12 % Feuchte",
  "Finnish wood information service: air-dry density as printed":
    "Finnischer Holz-Informationsdienst: lufttrockene Dichte wie gedruckt",
  "density: NIST material constants for nylon. Modulus: drawn nylon monofilament 2–3 GPa, from memory (0.25 mm: about 100 N per unit strain)":
    "Dichte: NIST, Materialkonstanten für Nylon. Elastizitätsmodul: gezogenes Nylon 2–3 GPa, aus dem Gedächtnis (0,25 mm: etwa 100 N durch Dehnung)",
  "density: as PVDF (NIST 1760, plastics tables 1770–1780), from memory. Modulus: drawn PVDF 2–3 GPa, from memory":
    "Dichte: wie PVDF (NIST 1760, Kunststofftabellen 1770–1780), aus dem Gedächtnis. Elastizitätsmodul: gezogenes PVDF 2–3 GPa, aus dem Gedächtnis",
  "density: gel-spun polyethylene fibre, makers' data, from memory. Modulus: braided, far below the fibre's 90–120 GPa, from memory (0.13–0.18 mm: 500–1000 N per unit strain)":
    "Dichte: gelgesponnene Polyethylenfaser, Angaben von Herstellern, aus dem Gedächtnis. Elastizitätsmodul: geflochten, weit unter den 90–120 GPa der Faser, aus dem Gedächtnis (0,13–0,18 mm: 500–1000 N durch Dehnung)",

  // Notes
  "takes up 2–9 % of water and softens: ±30 %": "nimmt 2–9 % Wasser auf und wird weicher: ±30 %",
  "modulus ±30 %": "Elastizitätsmodul ±30 %",
  "floats; modulus ±50 %, lower until the braid has settled":
    "schwimmt; Elastizitätsmodul ±50 %, weniger, bis sich das Geflecht gesetzt hat",
  "what is sold as tungsten weights is mostly such an alloy, 17.0–18.5 g/mL; the pure metal has its own entry":
    "was als Wolframgewicht verkauft wird, ist meist eine solche Legierung, 17,0–18,5 g/mL; das reine Metall hat einen eigenen Eintrag",
  "handbooks give 7850 for mild and spring steel (from memory)":
    "Handbücher geben 7850 für weichen Stahl und Federstahl (aus dem Gedächtnis)",
  "other handbooks 7900–8030 (from memory)": "andere Handbücher 7900–8030 (aus dem Gedächtnis)",
  "cartridge brass C26000 8530 (from memory); PNNL-15870 prints 8070 for a typical brass: weigh yours":
    "Patronenmessing C26000 8530 (aus dem Gedächtnis); PNNL-15870 druckt 8070 für ein typisches Messing: wiege deines",
  "the glycol-modified kind is near 1270 (from memory)":
    "die mit Glykol veränderte Sorte liegt bei 1270 (aus dem Gedächtnis)",
  "dry; takes up 2–9 % of water": "trocken; nimmt 2–9 % Wasser auf",
  "white and opaque colours are heavier than transparent ones":
    "weiße und deckende Farben sind schwerer als durchsichtige",
  "the grade usually names its density: give that":
    "meist steht die Dichte in der Bezeichnung der Sorte: gib diese ein",
  "varies widely within the species: weigh the blank": "schwankt innerhalb der Art stark: wiege den Rohling",
  "{note}; other published means are 120 (PNNL-15870) and 184 (Wood Handbook Table 5-5b with eq. 4-11)":
    "{note}; andere veröffentlichte Mittelwerte sind 120 (PNNL-15870) und 184 (Wood Handbook, Tabelle 5-5b mit Gl. 4-11)",
  "PNNL-15870 prints 710 for birch at large": "PNNL-15870 druckt 710 für Birke allgemein",
  "hard maple; soft maples are lighter": "harter Ahorn; weiche Ahorne sind leichter",
  "PNNL-15870 prints 430 for white pine": "PNNL-15870 druckt 430 für Weymouthkiefer",
  "Forest Research Institute Malaysia, wood database: 420–500 air-dry":
    "Forest Research Institute Malaysia, Holzdatenbank: 420–500 lufttrocken",
  "Chudnoff 1984, USDA Agric. Handbook 607, prints 24 lb/ft³ (384) air-dry":
    "Chudnoff 1984, USDA Agric. Handbook 607, druckt 24 lb/ft³ (384) lufttrocken",
  "European lime; American basswood is lighter":
    "europäische Linde; amerikanische Linde (basswood) ist leichter",
};
