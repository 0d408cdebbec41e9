// Lo que se dice de la velocidad de un cardán.
import { local } from "../matcher/speech-number";
import type { CalculationWords } from "./description";
import { turning } from "./speech-cautions";

const tube = "Mire si el diámetro y la pared están en la unidad de al lado.";
const ratio = "Las relaciones de marchas están entre 0,2 y 30.";

export const speed: CalculationWords = {
  title: "Velocidad del cardán",
  inputs: {
    outside: { label: "Tubo, diámetro exterior", why: tube },
    wall: { label: "Tubo, grueso de la pared", why: tube },
    material: { label: "Material", options: { steel: "acero", aluminium: "aluminio" } },
    length: { label: "Longitud entre centros de juntas", why: "Un cardán tiene de 50 mm a 12 m de longitud." },
    from: {
      label: "La velocidad se sabe por",
      options: {
        given: "el cardán mismo",
        engine: "velocidad del motor y marchas",
        road: "velocidad en el camino, rueda y eje",
      },
    },
    speed: { label: "Velocidad del cardán", why: "Por encima de 20 000 rev/min no gira ningún cardán así." },
    engine: { label: "Velocidad del motor", why: "Por encima de 20 000 rev/min no gira ningún motor así." },
    gear: { label: "Relación de la marcha más alta", why: ratio },
    transfer: { label: "Relación de la caja de transferencia", why: ratio },
    road: { label: "Velocidad en el camino", why: "Por encima de 500 km/h esto no es ningún camino." },
    tyre: { label: "Radio de rodadura de la rueda", why: "Un radio, no un diámetro." },
    axle: { label: "Relación del eje", why: ratio },
  },
  parts: {
    running: "Velocidad a la que gira",
    critical: "Velocidad crítica",
    working: "Velocidad de trabajo al lado de ella",
    longest: "El cardán más largo de este tubo a esta velocidad",
    tube: "Menor diámetro exterior para esta longitud y velocidad",
  },
  cautions: turning,
  unchecked: [
    "El peso de las horquillas, lo que ceden juntas, soportes y apoyos, golpes y soldaduras: cada cosa baja la velocidad crítica real.",
    "Si el cardán está derecho y equilibrado, y si sus juntas y estriados admiten la velocidad.",
    "El exceso de velocidad cuesta abajo o con las ruedas en el aire.",
  ],
  grounds: {
    "a guide of SAE as recalled": "una guía de SAE, de memoria",
    "steel; with this density 0.3 % below the constant IMS prints":
      "acero; con esta densidad, 0,3 % por debajo de la constante que imprime IMS",
    "industrial shafts": "cardanes industriales",
    "vehicle shafts": "cardanes de vehículos",
    "the same with the slip outside the joints": "lo mismo con el deslizante por fuera de las juntas",
    "the same with the slip between the joints": "lo mismo con el deslizante entre las juntas",
    "1.21e8, mm and rev/min": "1,21e8, mm y rev/min",
    "4.8e6, in and rev/min": "4,8e6, in y rev/min",
    "4.705e6, in and rev/min": "4,705e6, in y rev/min",
    "4.764e6, in and rev/min": "4,764e6, in y rev/min",
    "4.75e6, in and rev/min": "4,75e6, in y rev/min",
    "from 10e6 psi and 0.098 lb/in³": "de 10e6 psi y 0,098 lb/in³",
    "First bending mode of an even, slender tube on rigid hinges. Weight of yokes, give of joints and hangers and shear are left out, so the real one is lower: about 2 % by shear alone at 14 diameters long.":
      "Primer modo de flexión de un tubo parejo y esbelto sobre articulaciones rígidas. El peso de las horquillas, lo que ceden juntas y soportes y el corte quedan fuera, así que la real es menor: cerca de 2 % solo por el corte con 14 diámetros de longitud.",
    "A joint shakes its shaft twice a turn, so steady running near half the critical speed is to be avoided.":
      "Una junta sacude su cardán dos veces por vuelta, así que hay que evitar marchar de continuo cerca de la mitad de la velocidad crítica.",
    "From the critical speed turned round.": "De la velocidad crítica, despejando.",
    "The tube alone.": "El tubo solo.",
    "net, or 0.95 of gross; gearbox 0.80 automatic, 0.85 manual; transfer case 0.95":
      "neto, o 0,95 del bruto; caja de cambios 0,80 automática, 0,85 manual; caja de transferencia 0,95",
    "0.95 of net, or 0.85 of gross; gearbox 0.95; nothing said of a transfer case":
      "0,95 del neto, o 0,85 del bruto; caja de cambios 0,95; no dice nada de una caja de transferencia",
    "tyre on road": "neumático en el camino",
    "of the axle; 11.4 in the printed form is 12 x 0.95": "del eje; 11,4 en la fórmula impresa es 12 x 0,95",
    "steel on steel, greased": "acero sobre acero, engrasado",
    "plastic-coated": "con recubrimiento plástico",
    "T = T_engine x rating x gear x gearbox x stall x transfer ratio x transfer":
      "T = T_motor x neto o bruto x marcha x caja x convertidor x relación de transferencia x transferencia",
    "Steady pull at the engine's greatest torque. Shock, as when a clutch is dropped, is not in it.":
      "Tiro constante con el par máximo del motor. Los golpes, como al soltar de golpe un embrague, no entran.",
    "T = friction x W x r / (axle ratio x axle efficiency)":
      "T = rozamiento x W x r / (relación del eje x rendimiento del eje)",
    "Level road. Weight that shifts to the axle when pulling away must be in its load.":
      "Camino nivelado. El peso que pasa al eje al arrancar tiene que estar en su carga.",
    "road use: the smaller of both, but no more than one series below the one for the low-gear torque; off the road: the low-gear torque":
      "uso en camino: el menor de los dos, pero no más de una serie por debajo de la que pide el par en marcha baja; fuera del camino: el par en marcha baja",
    "A rule for choosing a series of that maker.": "Una regla para elegir una serie de ese fabricante.",
    "Steady running, no losses.": "Marcha constante, sin pérdidas.",
    "tau = 16 T D / (pi (D^4 - d^4)); twist = 32 T L / (G pi (D^4 - d^4))":
      "tau = 16 T D / (pi (D^4 - d^4)); giro = 32 T L / (G pi (D^4 - d^4))",
    "Even round tube or bar, elastic. Welds, seams, dents, splines and fatigue are left out.":
      "Tubo o barra redondos y parejos, elásticos. Soldaduras, costuras, abolladuras, estriados y fatiga quedan fuera.",
    "Thin walls; r to the middle of the wall.": "Paredes delgadas; r hasta el medio de la pared.",
    "tau at yield = sigma / sqrt 3 (von Mises), sigma / 2 (Tresca)":
      "tau en la fluencia = sigma / sqrt 3 (von Mises), sigma / 2 (Tresca)",
    "First yield of sound metal under steady torque; nothing is taken off for shock or fatigue.":
      "Comienzo de la fluencia de metal sano bajo par constante; no se descuenta nada por golpes ni fatiga.",
    "driving shaft 0 ... T tan b, driven shaft T sin b ... 0, a quarter turn apart":
      "árbol conductor 0 ... T tan b, árbol conducido T sen b ... 0, a un cuarto de vuelta",
    "No friction. Twice a turn; which shaft has which is derived from the couple standing square to the cross, and so is the driven shaft's greatest past 45 degrees, T / (2 cos b).":
      "Sin rozamiento. Dos veces por vuelta; cuál árbol tiene cuál se deduce de que el par es perpendicular a la cruz, y lo mismo el máximo del árbol conducido más allá de 45 grados, T / (2 cos b).",
    "Load shared evenly by two trunnions; R to the middle of the needles.":
      "Carga repartida por igual entre dos muñones; R hasta el medio de las agujas.",
    "A = T cos b1 b/(L a) (tan b1 -+ tan b2), B = with (a + b), E, F alike with e, f; a quarter turn later T tan b1 / a, T sin b2 / (f cos b1)":
      "A = T cos b1 b/(L a) (tan b1 -+ tan b2), B = con (a + b), E, F igual con e, f; un cuarto de vuelta después T tan b1 / a, T sen b2 / (f cos b1)",
    "Z takes the difference, W the sum. One plane, yokes in line; the two positions only, weight and unbalance not in it.":
      "Z toma la diferencia, W la suma. Un plano, horquillas alineadas; solo las dos posiciones, sin peso ni desequilibrio.",
    "Sliding under full torque.": "Deslizando con todo el par.",
    "T rated = k T": "T nominal = k T",
    "Three points are printed. Between them the next higher is taken; up to 10 degrees k = 1.":
      "Hay tres puntos impresos. Entre ellos se toma el siguiente mayor; hasta 10 grados k = 1.",
    "w = w_engine / (gear x transfer)": "w = w_motor / (marcha x transferencia)",
    "No slip of clutch or converter.": "Sin resbalamiento de embrague o convertidor.",
    "w = v axle / r; v[km/h] = 0.06 n U / (i_G i_V i_A)": "w = v eje / r; v[km/h] = 0,06 n U / (i_G i_V i_A)",
    "r is the radius the tyre rolls on under load, U = 2 pi r; a tyre grows at speed and shrinks as it wears.":
      "r es el radio con que rueda la rueda con carga, U = 2 pi r; un neumático crece con la velocidad y encoge con el desgaste.",
    steel: "acero",
    aluminium: "aluminio",
  },
};

const share = (fraction: number, says: string): string =>
  `${local(fraction.toFixed(3).replace(/0+$/, ""))} de la crítica, ${says}`;

export const say = {
  speed: "Velocidad del cardán",
  road: "Velocidad en el camino a esa velocidad del motor",
  critical: "Primera velocidad crítica de flexión",
  half: "La mitad de ella",
  mass: "Peso del tubo solo",
  constant: (says: string): string => `Lo mismo con la constante ${says}`,
  fraction: "Velocidad de trabajo como parte de la crítica",
  share,
  nearHalf:
    "La velocidad de trabajo queda a menos de una décima de la mitad de la crítica, donde los dos golpes de una junta en cada vuelta sacuden el cardán: evite marchar ahí de continuo.",
  longest: "El más largo, a la propia velocidad crítica",
  longestAt: (fraction: number, says: string): string => `El más largo a ${share(fraction, says)}`,
  tube: "Menor diámetro, a la propia velocidad crítica",
  tubeAt: (fraction: number, says: string): string => `Menor diámetro a ${share(fraction, says)}`,
  plot: {
    title:
      "Velocidad crítica según la longitud, y la mitad de ella en línea cortada; el anillo es este cardán a su velocidad de trabajo",
    x: (unit: string): string => `Longitud, ${unit}`,
    y: "Velocidad, rev/min",
    here: "este cardán",
  },
};
