// Lo que se dice de los anillos y de un dado en su alojamiento.
import type { CalculationWords } from "./description";
import { fitting } from "./speech-cautions";

const span = "Una cruceta tiene de 10 a 400 mm de largo.";
const thick = "Los anillos tienen de 0,5 a 6 mm de grueso.";
const within = "Una lectura que puede fallar en más de 5 mm no es una lectura.";
const round = "Los dados y los alojamientos tienen de 5 a 120 mm.";

export const clips: CalculationWords = {
  title: "Anillos y ajuste",
  inputs: {
    hold: {
      label: "Anillos",
      options: { "outside-clip": "por fuera de las orejas", "inside-clip": "por dentro de las orejas" },
    },
    yoke: { label: "Horquilla", why: span },
    joint: { label: "Cruceta", why: span },
    within: { label: "Estas lecturas son buenas hasta ±", why: within },
    clip: { label: "Grueso del anillo", why: thick },
    other: { label: "Grueso del anillo del otro lado", why: thick },
    clipwithin: { label: "Las lecturas del anillo son buenas hasta ±", why: within },
    float: { label: "Juego que se quiere", why: "De nada a 2 mm." },
    cap: { label: "Diámetro del dado", why: round },
    bore1: { label: "Alojamiento de una oreja", why: round },
    bore2: { label: "Alojamiento de la otra oreja", why: round },
    capwithin: { label: "Las lecturas de dado y alojamiento son buenas hasta ±", why: within },
    size: { label: "Medida nominal del dado, para ISO 286", why: "Los límites impresos van de 18 a 80 mm." },
    class: { label: "Clase de tolerancia del dado", options: { h6: "h6", h7: "h7" } },
  },
  parts: {
    float: "Juego entre los anillos",
    choose: "Anillos que irían",
    bores: "El dado en su alojamiento, como se midió",
    iso: "El dado en su alojamiento, según ISO 286",
  },
  cautions: fitting,
  unchecked: [
    "Suciedad o rebabas debajo de un anillo, orejas dobladas, agujas gastadas: cada cosa da un juego que no está en estos números.",
    "Si la cruceta se mueve libre a mano después de montada, cosa que solo dice la mano.",
    "Si el anillo asienta en su ranura en toda la vuelta.",
  ],
  grounds: {
    "renew the joint above this": "por encima de esto, cambiar la cruceta",
    "after fitting: none": "después de montar: nada",
    "after fitting, some models: none": "después de montar, algunos modelos: nada",
    "after fitting, equal clips both sides": "después de montar, anillos iguales a los dos lados",
    "after fitting, other models": "después de montar, otros modelos",
    "along the trunnions": "a lo largo de los muñones",
    "a cap in a full-round ear is pressed: no clearance": "un dado en una oreja cerrada va a presión: sin holgura",
    "at most 0.03 mm tighter than the bore": "a lo más 0,03 mm más apretado que el alojamiento",
    "float = groove to groove - over the caps - clip - clip":
      "juego = de ranura a ranura - sobre los dados - anillo - anillo",
    "Yoke from groove to groove over the ears. Bent ears, dirt under a clip and worn needles are not in it.":
      "Horquilla de ranura a ranura por encima de las orejas. Las orejas dobladas, la suciedad debajo de un anillo y las agujas gastadas no entran.",
    "float = ear to ear - inner groove faces - clip - clip":
      "juego = de oreja a oreja - caras interiores de ranura - anillo - anillo",
    "Yoke from ear to ear over the machined inner faces. Bent ears, dirt under a clip and worn needles are not in it.":
      "Horquilla de oreja a oreja sobre las caras interiores maquinadas. Las orejas dobladas, la suciedad debajo de un anillo y las agujas gastadas no entran.",
    "U = sqrt(U_yoke^2 + U_joint^2 + (U_clip + U_clip)^2)":
      "U = sqrt(U_horquilla^2 + U_cruceta^2 + (U_anillo + U_anillo)^2)",
    "Both clips read with the same tool: its error is the same on both and adds straight.":
      "Los dos anillos leídos con el mismo instrumento: su error es el mismo en los dos y se suma directamente.",
    "clearance = bore - cap": "holgura = alojamiento - dado",
    "Round parts at 20 °C.": "Piezas redondas a 20 °C.",
  },
};

export const say = {
  float: "Juego",
  uncertainty: "Puede fallar en ±",
  binds: "Probabilidad de que apriete",
  offCentre: "Cruceta fuera del centro en",
  state: (state: "floats" | "binds" | "not-known", least: string, most: string): string =>
    state === "floats"
      ? `Tiene juego: entre ${least} y ${most}, con lo que pueden fallar las lecturas.`
      : state === "binds"
        ? `Aprieta: entre ${least} y ${most}, con lo que pueden fallar las lecturas. Una cruceta metida así se calienta y destroza sus agujas.`
        : `No se sabe si tiene juego o aprieta: entre ${least} y ${most}, con lo que pueden fallar las lecturas. Mida otra vez, con un instrumento más fino.`,
  thickness: "Grueso de dos anillos iguales para el juego que se quiere",
  thicknessUncertainty: "Puede fallar en ±",
  fromSet: (least: string, most: string): string => `De la serie de ${least} a ${most}, el más grueso que no aprieta`,
  leaves: (float: string): string => `deja ${float}`,
  rangeOnly: "solo está impreso un intervalo",
  noneOfSet: "ninguno va",
  bothSides:
    "El mismo grueso a los dos lados, o la cruceta queda fuera del centro y vibra. Los anillos no se usan otra vez.",
  clearance: (n: number): string => `Oreja ${n}: alojamiento menos dado`,
  tight: (n: number): string => `Oreja ${n}: probabilidad de que el dado sea mayor`,
  bore: (n: number): string => `oreja ${n}`,
  clearanceTitle: "Alojamiento menos dado",
  press: "Por debajo de cero hay que meter el dado a presión. Un dado que entra flojo girará y gastará la oreja.",
  between: (least: string, most: string): string => `${least} a ${most}`,
  isoCap: "Dado",
  isoBore: "Alojamiento, H7",
  isoClearance: "Alojamiento menos dado",
  isoUse: (ground: string): string => `Que los fabricantes usen este ajuste para los dados: ${ground}.`,
};
