import type { Material } from "./types";

const HANDBOOK = "USDA Forest Products Laboratory 2021, Wood Handbook FPL-GTR-282, ch. 5";

/** Moisture content of the table, as a share of the oven-dry mass. */
const MOISTURE = 0.12;

/** Oven-dry mass over volume at 12 % moisture → density at 12 % moisture, kg/m³: 1000·G₁₂·1.12. */
const atTwelve = (G12: number): number => round(1000 * G12 * (1 + MOISTURE));

/**
 * Oven-dry mass over *green* volume (tropical species are printed so) → the same over volume at 12 % moisture:
 * G₁₂ = G_b/(1 − 0.265·a·G_b), a = (30 − 12)/30. Source: Wood Handbook FPL-GTR-282, eq. 4-11.
 */
const fromGreen = (Gb: number): number => Gb / (1 - 0.265 * ((30 - 12) / 30) * Gb);

const round = (density: number): number => Math.round(10 * density) / 10;

/** G₁₂ printed in Table 5-3b. */
const temperate = (name: string, G12: number, otherNames: readonly string[], note?: string): Material => ({
  name,
  otherNames,
  density: atTwelve(G12),
  kind: "wood",
  source: `${HANDBOOK}, Table 5-3b: G = ${G12} oven-dry over volume at 12 %; density at 12 % moisture = 1120 G`,
  ...(note === undefined ? {} : { note }),
});

/** G_b printed in Table 5-5b: the density at 12 % moisture is an estimate. */
const tropical = (name: string, Gb: number, otherNames: readonly string[], note?: string): Material => ({
  name,
  otherNames,
  density: atTwelve(fromGreen(Gb)),
  kind: "wood",
  source: `${HANDBOOK}, Table 5-5b: G = ${Gb} oven-dry over green volume; density at 12 % moisture estimated with eq. 4-11`,
  ...(note === undefined ? {} : { note }),
});

const WEIGH = "varies widely within the species: weigh the blank";

export const woods: readonly Material[] = [
  temperate("alder", 0.41, ["red alder", "alder, red", "Alnus rubra"]),
  temperate("white ash", 0.6, ["ash", "ash, white", "Fraxinus americana"]),
  temperate("bigtooth aspen", 0.39, ["aspen, bigtooth", "Populus grandidentata"]),
  temperate("aspen", 0.38, ["quaking aspen", "aspen, quaking", "Populus tremuloides"]),
  temperate("basswood", 0.37, ["American basswood", "basswood, American", "Tilia americana"]),
  temperate("beech", 0.64, ["American beech", "beech, American", "Fagus grandifolia"]),
  temperate(
    "birch",
    0.55,
    ["paper birch", "birch, paper", "Betula papyrifera"],
    "PNNL-15870 prints 710 for birch at large",
  ),
  temperate("sweet birch", 0.65, ["birch, sweet", "Betula lenta"]),
  temperate("yellow birch", 0.62, ["birch, yellow", "Betula alleghaniensis"]),
  temperate("butternut", 0.38, ["Juglans cinerea"]),
  temperate("cherry", 0.5, ["black cherry", "cherry, black", "Prunus serotina"]),
  temperate("balsam poplar", 0.34, ["cottonwood, balsam poplar", "Populus balsamifera"]),
  temperate("black cottonwood", 0.35, ["cottonwood, black", "Populus trichocarpa"]),
  temperate("cottonwood", 0.4, ["eastern cottonwood", "cottonwood, eastern", "Populus deltoides"]),
  temperate(
    "maple",
    0.63,
    ["sugar maple", "hard maple", "maple, sugar", "Acer saccharum"],
    "hard maple; soft maples are lighter",
  ),
  temperate("bigleaf maple", 0.48, ["maple, bigleaf", "Acer macrophyllum"]),
  temperate("red maple", 0.54, ["soft maple", "maple, red", "Acer rubrum"]),
  temperate("silver maple", 0.47, ["maple, silver", "Acer saccharinum"]),
  temperate("white oak", 0.68, ["oak", "oak, white", "Quercus alba"]),
  temperate("tupelo", 0.5, ["water tupelo", "tupelo, water", "Nyssa aquatica"]),
  temperate("walnut", 0.55, ["black walnut", "walnut, black", "Juglans nigra"]),
  temperate("willow", 0.39, ["black willow", "willow, black", "Salix nigra"]),
  temperate("yellow poplar", 0.42, ["yellow-poplar", "poplar", "tulipwood", "Liriodendron tulipifera"]),
  temperate("baldcypress", 0.46, ["bald cypress", "cypress", "Taxodium distichum"]),
  temperate("Atlantic white cedar", 0.32, ["cedar, Atlantic white", "Chamaecyparis thyoides"]),
  temperate("eastern redcedar", 0.47, [
    "eastern red cedar",
    "aromatic cedar",
    "cedar, eastern redcedar",
    "Juniperus virginiana",
  ]),
  temperate("incense cedar", 0.37, ["cedar, incense", "Calocedrus decurrens"]),
  temperate("northern white cedar", 0.31, ["white cedar", "cedar, northern white", "Thuja occidentalis"]),
  temperate("Port Orford cedar", 0.43, ["cedar, Port-Orford", "Chamaecyparis lawsoniana"]),
  temperate("cedar", 0.32, [
    "red cedar",
    "western redcedar",
    "western red cedar",
    "cedar, western redcedar",
    "Thuja plicata",
  ]),
  temperate("yellow cedar", 0.44, ["Alaska cedar", "cedar, yellow (Alaska)", "Callitropsis nootkatensis"]),
  temperate("Douglas fir", 0.48, ["Douglas-fir", "Douglas-fir, coast", "Pseudotsuga menziesii"]),
  temperate("balsam fir", 0.35, ["fir", "fir, balsam", "Abies balsamea"]),
  temperate(
    "pine",
    0.35,
    ["eastern white pine", "white pine", "pine, eastern white", "Pinus strobus"],
    "PNNL-15870 prints 430 for white pine",
  ),
  temperate("ponderosa pine", 0.4, ["pine, ponderosa", "Pinus ponderosa"]),
  temperate("red pine", 0.46, ["pine, red", "Pinus resinosa"]),
  temperate("sugar pine", 0.36, ["pine, sugar", "Pinus lambertiana"]),
  temperate("western white pine", 0.38, ["pine, western white", "Pinus monticola"]),
  temperate("old-growth redwood", 0.4, ["redwood", "redwood, old-growth", "Sequoia sempervirens"]),
  temperate("young-growth redwood", 0.35, ["redwood, young-growth"]),
  temperate("Engelmann spruce", 0.35, ["spruce, Engelmann", "Picea engelmannii"]),
  temperate("spruce", 0.4, ["Sitka spruce", "spruce, Sitka", "Picea sitchensis"]),

  {
    name: "balsa",
    otherNames: ["Ochroma pyramidale", "balsa, trade"],
    density: 160,
    range: [128, 224],
    kind: "wood",
    // a uniform spread over the printed range: (224 − 128)/√12 / 160
    relativeUncertainty: 0.17,
    source:
      "Chudnoff 1984, Tropical Timbers of the World, USDA Agric. Handbook 607: 8–14 lb/ft³, trade average 10 lb/ft³",
    note: `${WEIGH}; other published means are 120 (PNNL-15870) and 184 (Wood Handbook Table 5-5b with eq. 4-11)`,
  },
  tropical("banak", 0.42, ["virola"]),
  tropical("ceiba", 0.25, ["Ceiba pentandra"]),
  tropical("cuangare", 0.31, ["Dialyanthera"]),
  tropical("Mexican cypress", 0.39, ["cypress, Mexican", "Cupressus lusitanica"]),
  {
    ...tropical("jelutong", 0.36, ["Dyera costulata"]),
    range: [420, 500],
    note: "Forest Research Institute Malaysia, wood database: 420–500 air-dry",
  },
  tropical("light red meranti", 0.34, ["lauan", "meranti", "lauan-meranti, light red", "Shorea"]),
  tropical("limba", 0.38, ["Terminalia superba"]),
  tropical("African mahogany", 0.42, ["khaya", "mahogany, African"]),
  tropical("mahogany", 0.45, ["true mahogany", "mahogany, true", "Swietenia macrophylla"]),
  {
    ...tropical("obeche", 0.3, ["abachi", "wawa", "ayous", "samba", "Triplochiton scleroxylon"]),
    range: [352.8, 384.4],
    note: "Chudnoff 1984, USDA Agric. Handbook 607, prints 24 lb/ft³ (384) air-dry",
  },
  tropical("okoume", 0.33, ["Aucoumea klaineana"]),
  tropical("Spanish cedar", 0.41, ["Spanish-cedar", "cedrela"]),
  tropical("sapele", 0.55, ["Entandrophragma cylindricum"]),
  tropical("teak", 0.55, ["Tectona grandis"]),
  {
    name: "paulownia",
    otherNames: ["Paulownia tomentosa", "kiri"],
    density: 317,
    kind: "wood",
    source: "Akyildiz & Kol 2010, J. Environ. Biol. 31:351–355: air-dry density as printed",
  },
  {
    name: "lime",
    otherNames: ["large-leaved lime", "linden", "lime, large-leaved", "Tilia platyphyllos"],
    density: 490,
    kind: "wood",
    source:
      "Wagenführ 1996, Holzatlas, and Gottwald 1970, as quoted in a timber trade sheet: at 12 % moisture",
    note: "European lime; American basswood is lighter",
  },
  {
    name: "small-leaved lime",
    otherNames: ["lime, small-leaved", "Tilia cordata"],
    density: 500,
    kind: "wood",
    source: "Finnish wood information service: air-dry density as printed",
  },
];
